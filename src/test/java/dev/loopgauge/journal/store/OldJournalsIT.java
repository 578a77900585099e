package dev.loopgauge.journal.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.outside.NeedsPostgres;
import dev.loopgauge.outside.PostgresServer;
import dev.loopgauge.verify.verdict.Judgement;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Opens the journals of all versions; see {@link JournalFixture} for how to keep one. */
@Timeout(120)
class OldJournalsIT {
  private static final UUID FIRST = UUID.fromString("12345678-9abc-4000-8000-000000000001");
  private static final UUID SECOND = UUID.fromString("12345678-9abc-4000-8000-000000000002");

  @TempDir Path folder;

  static IntStream versions() {
    return IntStream.rangeClosed(1, Schema.VERSION);
  }

  @ParameterizedTest
  @MethodSource("versions")
  void opensOldFile(int version) throws Exception {
    Path copy = folder.resolve("journal.db");
    Files.copy(JournalFixture.file(version), copy);
    check(version, copy.toString(), Map.of());
  }

  @ParameterizedTest
  @MethodSource("versions")
  @NeedsPostgres
  void opensOldDatabase(int version) throws Exception {
    try (PostgresServer server = PostgresServer.start()) {
      check(version, server.database(JournalFixture.dump(version)), server.environment());
    }
  }

  /** The digest beside each entry says that it is what the old program had stored. */
  private static void check(int version, String place, Map<String, String> environment)
      throws Exception {
    try (Journal journal = Journals.openExisting(place, environment)) {
      assertEquals(List.of(), journal.check());
      assertEquals(JournalFixture.ENTRIES, journal.headings(Selection.ALL).size());
      Entry first = journal.entry(FIRST).orElseThrow();
      Heading heading = first.heading();
      assertEquals("2026-05-01T19:01:00.125+01:00[Europe/Lisbon]", heading.at().toString());
      assertEquals("Harbour, Friday", heading.show());
      assertEquals(Optional.of("vocal-house"), heading.path());
      assertEquals(595, heading.delay().orElseThrow().delay().samples());
      assertEquals(standing(version), heading.standing());
      assertEquals(Map.of("clock-leader", "desk", "network-latency", "1 ms"), first.setup());
      assertEquals("chain: Hall\n", first.chain().orElseThrow().text());
      assertEquals(Optional.of(FIRST), journal.entry(SECOND).orElseThrow().heading().corrects());
      assertEquals(JournalFixture.ENTRIES + 1, added(journal));
    }
  }

  /** Version 1 didn't keep it. */
  private static Optional<Judgement> standing(int version) {
    return version == 1 ? Optional.empty() : Optional.of(Judgement.GOOD);
  }

  private static int added(Journal journal) throws Exception {
    journal.append(List.of(WriterProcess.entry(99)));
    return journal.headings(Selection.ALL).size();
  }
}
