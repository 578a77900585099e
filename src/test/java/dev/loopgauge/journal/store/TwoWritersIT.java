package dev.loopgauge.journal.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.outside.NeedsPostgres;
import dev.loopgauge.outside.PostgresServer;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Two processes begin the same journal, and write to it at once. */
@Timeout(120)
class TwoWritersIT {
  private static final long ENTRIES = 40;

  @TempDir Path folder;

  @Test
  void shareOneFile() throws Exception {
    share(folder.resolve("journal.db").toString(), Map.of());
  }

  @Test
  @NeedsPostgres
  void shareOneServer() throws Exception {
    try (PostgresServer server = PostgresServer.start()) {
      share(server.database(), server.environment());
    }
  }

  private static void share(String place, Map<String, String> environment) throws Exception {
    Writer one = Writer.start(place, 0, ENTRIES, environment);
    Writer other = Writer.start(place, Writer.ENDLESS, ENTRIES, environment);
    assertEquals(List.of(ENTRIES, ENTRIES), List.of(one.stored(), other.stored()));
    try (Journal journal = Journals.open(place, environment)) {
      assertEquals(2 * ENTRIES, journal.headings(Selection.ALL).size());
      assertEquals(List.of(), journal.check());
    }
  }
}
