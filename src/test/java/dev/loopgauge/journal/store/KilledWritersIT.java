package dev.loopgauge.journal.store;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.WithoutAudioServers;
import dev.loopgauge.outside.FaultyDisk;
import dev.loopgauge.outside.NeedsPostgres;
import dev.loopgauge.outside.NeedsTool;
import dev.loopgauge.outside.PostgresServer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Nothing is lost when eight processes write at once and are killed, {@code loopgauge.kills} of
 * them on SQLite and as many on PostgreSQL, nor on a disk that fails or is slow. The profile {@code
 * kills} takes 500; the table goes to target/kills.md.
 */
@WithoutAudioServers
class KilledWritersIT {
  private static final int KILLS = Integer.getInteger("loopgauge.kills", 16);
  private static final int LIVES = Math.min(3, KILLS / StruckWriters.WRITERS);

  /** On faulty disks, where each life takes longer. */
  private static final int FAULTS = Math.max(StruckWriters.WRITERS, KILLS / 5);

  private static final long SEED = 20_261_129;

  private static final Path TABLE = Path.of("target", "kills.md");

  @TempDir Path folder;

  @BeforeAll
  static void beginTable() throws IOException {
    Files.writeString(TABLE, StruckWriters.tableHead());
  }

  private static StruckWriters writers(Map<String, String> reading, Map<String, String> more) {
    return new StruckWriters(reading, more, new SplittableRandom(SEED));
  }

  /** Each journal is a new one, so that some strikes meet its first tables half made. */
  private void inFiles(StruckWriters writers, int ends, StruckWriters.Strike strike)
      throws Exception {
    for (int journal = 0; StruckWriters.WRITERS * LIVES * journal < ends; journal++) {
      Path file = folder.resolve(journal + ".db");
      Path undo = folder.resolve(journal + ".db-journal");
      writers.run(file.toString(), LIVES, strike, () -> Files.exists(undo));
    }
  }

  private static void onServer(
      PostgresServer server, StruckWriters writers, int ends, StruckWriters.Strike strike)
      throws Exception {
    for (int journal = 0; StruckWriters.WRITERS * LIVES * journal < ends; journal++) {
      writers.run(
          server.database(),
          LIVES,
          strike,
          () -> {
            server.awaitNobody();
            return false;
          });
    }
  }

  @Test
  void killedWritersLoseNothingInOneFile() throws Exception {
    StruckWriters writers = writers(Map.of(), Map.of());
    inFiles(writers, KILLS, StruckWriters::kill);
    note(writers.row("SQLite", "killed"));
  }

  @Test
  @NeedsPostgres
  void killedWritersLoseNothingOnAServer() throws Exception {
    try (PostgresServer server = PostgresServer.start()) {
      StruckWriters writers = writers(server.environment(), Map.of());
      onServer(server, writers, KILLS, StruckWriters::kill);
      note(writers.row("PostgreSQL", "killed"));
    }
  }

  /** Some fifteen entries on average before a wait for the disk fails. */
  @Test
  @NeedsTool("gcc")
  void aFailingDiskLosesNothingInOneFile() throws Exception {
    FaultyDisk disk = FaultyDisk.failingOnceIn(60, folder);
    StruckWriters writers = writers(Map.of(), disk.environment());
    inFiles(
        writers,
        FAULTS,
        (writer, moments) -> failed(writer, ".*(disk fails|not be written to the end).*"));
    note(writers.row("SQLite", "fsync fails once in 60"));
  }

  /** The server ends itself, repairs its files and starts again, or is started again. */
  @Test
  @NeedsPostgres
  @NeedsTool("gcc")
  void aFailingDiskLosesNothingOnAServer() throws Exception {
    try (PostgresServer server = PostgresServer.startOn(FaultyDisk.failingOnceIn(400, folder))) {
      StruckWriters writers = writers(server.environment(), Map.of());
      for (int journal = 0; StruckWriters.WRITERS * LIVES * journal < FAULTS; journal++) {
        writers.run(server.databaseAtLast(), LIVES, (w, moments) -> lost(w, server), () -> false);
      }
      note(writers.row("PostgreSQL", "fsync fails once in 400"));
    }
  }

  private static long lost(Writer writer, PostgresServer server) throws Exception {
    long stored = failed(writer, ".*(can't be reached|lost the connection|PANIC).*");
    server.restart();
    return stored;
  }

  /** Waits until it ends by itself, with such a sentence. */
  private static long failed(Writer writer, String sentence) throws Exception {
    Writer.Ended ended = writer.end();
    String told = ended.failure().orElse("no failure");
    assertTrue(told.matches(sentence), told);
    return ended.stored();
  }

  @Test
  @NeedsTool("gcc")
  void aSlowDiskLosesNothingInOneFile() throws Exception {
    FaultyDisk disk = FaultyDisk.slow(50, folder);
    StruckWriters writers = writers(Map.of(), disk.environment());
    inFiles(writers, FAULTS, StruckWriters::kill);
    note(writers.row("SQLite", "killed, fsync takes 50 ms"));
  }

  @Test
  @NeedsPostgres
  @NeedsTool("gcc")
  void aSlowDiskLosesNothingOnAServer() throws Exception {
    try (PostgresServer server = PostgresServer.startOn(FaultyDisk.slow(50, folder))) {
      StruckWriters writers = writers(server.environment(), Map.of());
      onServer(server, writers, FAULTS, StruckWriters::kill);
      note(writers.row("PostgreSQL", "killed, fsync takes 50 ms"));
    }
  }

  private static void note(String row) throws IOException {
    Files.writeString(TABLE, row, StandardOpenOption.APPEND);
  }
}
