package dev.loopgauge.journal.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;

/**
 * Eight processes that write to one journal at once. Each ends at a moment of its own, by a kill or
 * by its own failure, and is started again while the others go on. What one had reported must be
 * there afterwards, whole, and beyond that no more than the one entry that it was busy with.
 */
final class StruckWriters {
  /** How many write at once. */
  static final int WRITERS = 8;

  private static final long OPENING_NANOS = TimeUnit.MILLISECONDS.toNanos(2000);
  private static final long STORING_NANOS = TimeUnit.MILLISECONDS.toNanos(300);

  private final Map<String, String> reading;
  private final Map<String, String> writing;
  private final SplittableRandom random;
  private final AtomicLong lives = new AtomicLong();
  private long reported;
  private long found;
  private long interrupted;

  /**
   * No writers yet.
   *
   * @param reading what opens the journals
   * @param more what the environment of the writers has beside that
   * @param random chooses the moments
   */
  StruckWriters(Map<String, String> reading, Map<String, String> more, SplittableRandom random) {
    this.reading = reading;
    this.writing = new HashMap<>(reading);
    this.writing.putAll(more);
    this.random = random;
  }

  /** How the life of a writer ends; gives the number of entries that it reported. */
  interface Strike {
    long end(Writer writer, SplittableRandom moments) throws Exception;
  }

  /** What a writer came to. */
  private record Life(long first, long reported) {}

  /** Kills it while it starts or opens the journal, or later while it stores. */
  static long kill(Writer writer, SplittableRandom moments)
      throws IOException, InterruptedException {
    if (moments.nextInt(4) == 0) {
      LockSupport.parkNanos(moments.nextLong(OPENING_NANOS));
    } else {
      writer.awaitFirst();
      LockSupport.parkNanos(moments.nextLong(STORING_NANOS));
    }
    return writer.kill();
  }

  /**
   * Lets each writer live so often at one journal, and checks it when all have ended.
   *
   * @param halfWritten asked then: is a transaction half on the disk
   */
  void run(String place, int times, Strike strike, Callable<Boolean> halfWritten) throws Exception {
    ExecutorService all = Executors.newFixedThreadPool(WRITERS);
    List<Life> ended = new ArrayList<>();
    try {
      List<Future<List<Life>>> writers = new ArrayList<>();
      for (int writer = 0; writer < WRITERS; writer++) {
        SplittableRandom moments = random.split();
        writers.add(all.submit(() -> lives(place, times, strike, moments)));
      }
      for (Future<List<Life>> writer : writers) {
        ended.addAll(writer.get());
      }
    } finally {
      all.shutdown();
    }
    interrupted += halfWritten.call() ? 1 : 0;
    check(place, ended);
  }

  private List<Life> lives(String place, int times, Strike strike, SplittableRandom moments)
      throws Exception {
    List<Life> ended = new ArrayList<>();
    for (int time = 0; time < times; time++) {
      long first = lives.getAndIncrement() * Writer.ENDLESS;
      Writer writer = Writer.start(place, first, Writer.ENDLESS, writing);
      ended.add(new Life(first, strike.end(writer, moments)));
    }
    return ended;
  }

  private void check(String place, List<Life> ended) throws JournalException {
    long here = 0;
    try (Journal journal = Journals.open(place, reading)) {
      for (Life life : ended) {
        here += compare(journal, life);
      }
      assertEquals(here, journal.headings(Selection.ALL).size());
      assertEquals(List.of(), journal.check());
    }
    found += here;
  }

  private long compare(Journal journal, Life life) throws JournalException {
    long n = life.first();
    for (; ; n++) {
      Entry expected = WriterProcess.entry(n);
      Optional<Entry> entry = journal.entry(expected.heading().id());
      if (entry.isEmpty()) {
        break;
      }
      assertEquals(expected, entry.get());
    }
    long stored = n - life.first();
    reported += life.reported();
    assertTrue(stored >= life.reported(), () -> stored + " there, lost some of " + life);
    assertTrue(stored <= life.reported() + 1, () -> stored + " there, too many of " + life);
    return stored;
  }

  /** The head of a Markdown table of campaigns. */
  static String tableHead() {
    return """
        | journal | what strikes | writers that ended | journals left half written \
        | entries reported | stored but not yet reported | lost or half there |
        |---|---|---|---|---|---|---|
        """;
  }

  /** These lives as a row of the table; had anything been lost, it would not have come to this. */
  String row(String journal, String strike) {
    return "| %s | %s | %d | %d | %d | %d | 0 |%n"
        .formatted(journal, strike, lives.get(), interrupted, reported, found - reported);
  }
}
