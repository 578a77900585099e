package dev.loopgauge.journal.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** SQLite locks connections of one process against each other as it does those of several. */
@Timeout(120)
class TakingTurnsTest {
  private static final int AT_ONCE = 4;
  private static final int ENTRIES = 40;

  @TempDir Path folder;

  @Test
  void manyBeginOneFileAtOnce() throws Exception {
    for (int file = 0; file < 5; file++) {
      String place = folder.resolve(file + ".db").toString();
      CyclicBarrier start = new CyclicBarrier(AT_ONCE);
      atOnce(
          AT_ONCE,
          n -> {
            start.await();
            Journals.open(place, Map.of()).close();
          });
    }
  }

  /** Half of the turns at the least: chance may let one go twice or three times in a row. */
  @Test
  void twoWhoWriteWithoutPauseTakeTurns() throws Exception {
    String place = folder.resolve("journal.db").toString();
    CyclicBarrier start = new CyclicBarrier(2);
    atOnce(
        2,
        n -> {
          try (Journal journal = Journals.open(place, Map.of())) {
            start.await();
            for (long i = 0; i < ENTRIES; i++) {
              journal.append(List.of(WriterProcess.entry(n * Writer.ENDLESS + i)));
            }
          }
        });
    List<Boolean> writers = new ArrayList<>();
    try (Journal journal = Journals.open(place, Map.of())) {
      List<Heading> first = new ArrayList<>();
      for (long i = 0; i < ENTRIES; i++) {
        first.add(WriterProcess.entry(i).heading());
      }
      for (Heading heading : byNumber(journal)) {
        writers.add(first.contains(heading));
      }
    }
    int turns = 0;
    for (int i = 1; i < writers.size(); i++) {
      turns += writers.get(i).equals(writers.get(i - 1)) ? 0 : 1;
    }
    assertTrue(turns >= ENTRIES, turns + " turns: " + writers);
  }

  private static List<Heading> byNumber(Journal journal) throws JournalException {
    Map<Long, Heading> found = new TreeMap<>();
    journal.each(
        Selection.ALL,
        kept -> found.put(kept.keeping().orElseThrow().number(), kept.entry().heading()));
    return List.copyOf(found.values());
  }

  @Test
  void whoWaitsTooLongIsTold() throws Exception {
    assertEquals(1, new TakingTurns(3_600_000).callback(0));
    assertEquals(0, new TakingTurns(0).callback(0));
  }

  /** Something for each of several at once. */
  private interface Part {
    void run(int n) throws Exception;
  }

  private static void atOnce(int count, Part part) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(count);
    try {
      List<Future<Void>> parts = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        int n = i;
        parts.add(threads.submit(() -> done(part, n)));
      }
      for (Future<Void> each : parts) {
        each.get();
      }
    } finally {
      threads.shutdownNow();
    }
  }

  private static Void done(Part part, int n) throws Exception {
    part.run(n);
    return null;
  }
}
