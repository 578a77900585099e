package dev.loopgauge.journal.store;

import dev.loopgauge.outside.NeedsPostgres;
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
 * Nothing is lost when writing processes are killed, {@code loopgauge.kills} of them on SQLite and
 * half as many on PostgreSQL. The profile {@code kills} takes 500; the table goes to
 * target/kills.md.
 */
class KilledWritersIT {
  private static final int KILLS = Integer.getInteger("loopgauge.kills", 24);
  private static final int PAIRS = 6;
  private static final long SEED = 20_261_125;

  private static final Path TABLE = Path.of("target", "kills.md");

  @TempDir Path folder;

  @BeforeAll
  static void beginTable() throws IOException {
    Files.writeString(TABLE, KilledWriters.tableHead());
  }

  /** Each journal is a new one, so that some kills meet its first tables half made. */
  @Test
  void aKilledWriterLosesNothingInOneFile() throws Exception {
    KilledWriters writers = new KilledWriters(Map.of(), new SplittableRandom(SEED));
    for (int journal = 0; 2 * PAIRS * journal < KILLS; journal++) {
      Path file = folder.resolve(journal + ".db");
      Path undo = folder.resolve(journal + ".db-journal");
      writers.run(file.toString(), PAIRS, () -> Files.exists(undo));
    }
    note(writers.row("SQLite"));
  }

  @Test
  @NeedsPostgres
  void aKilledWriterLosesNothingOnAServer() throws Exception {
    try (PostgresServer server = PostgresServer.start()) {
      KilledWriters writers = new KilledWriters(server.environment(), new SplittableRandom(SEED));
      for (int journal = 0; 4 * PAIRS * journal < KILLS; journal++) {
        writers.run(server.database(), PAIRS, () -> false);
      }
      note(writers.row("PostgreSQL"));
    }
  }

  private static void note(String row) throws IOException {
    Files.writeString(TABLE, row, StandardOpenOption.APPEND);
  }
}
