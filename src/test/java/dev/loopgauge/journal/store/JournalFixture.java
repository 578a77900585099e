package dev.loopgauge.journal.store;

import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.outside.PostgresServer;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Journals of each version that there ever was, as its program wrote them. Run this once for a new
 * version of the tables, from the project's folder; it never writes over what is there.
 */
final class JournalFixture {
  /** How many entries each holds. */
  static final int ENTRIES = 24;

  private static final Path FOLDER = Path.of("src/test/resources/dev/loopgauge/journal/store");

  private JournalFixture() {}

  /** The SQLite file of a version. */
  static Path file(int version) {
    return FOLDER.resolve("journal-%d.db".formatted(version)).toAbsolutePath();
  }

  /** The PostgreSQL database of a version, as SQL. */
  static Path dump(int version) {
    return FOLDER.resolve("journal-%d.sql".formatted(version)).toAbsolutePath();
  }

  /** Writes the journals of this version. */
  public static void main(String[] args) throws Exception {
    Path file = file(Schema.VERSION);
    if (Files.exists(file)) {
      throw new FileAlreadyExistsException(file.toString());
    }
    Files.createDirectories(FOLDER);
    fill(file.toString(), Map.of());
    try (PostgresServer server = PostgresServer.start()) {
      fill(server.database(), server.environment());
      server.dump(dump(Schema.VERSION));
    }
  }

  private static void fill(String place, Map<String, String> environment) throws JournalException {
    Entry first = Entries.entry(1);
    List<Entry> entries =
        new ArrayList<>(List.of(first, Entries.correcting(Entries.entry(2), first.heading().id())));
    SplittableRandom random = new SplittableRandom(1);
    while (entries.size() < ENTRIES) {
      entries.add(Entries.nasty(entries.size(), random));
    }
    try (Journal journal = Journals.open(place, environment)) {
      journal.append(entries);
    }
  }
}
