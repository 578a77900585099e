package dev.loopgauge.journal.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/**
 * Pairs of processes that write to one journal at once, each killed at a moment of its own: while
 * it starts or opens the journal, or later while it stores. What one had reported must be there
 * afterwards, whole, and beyond that no more than the one entry that it was busy with.
 */
final class KilledWriters {
  private static final long OPENING_NANOS = TimeUnit.MILLISECONDS.toNanos(700);
  private static final long STORING_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

  private final Map<String, String> environment;
  private final SplittableRandom random;
  private long kills;
  private long reported;
  private long found;
  private long interrupted;

  /**
   * No kills yet.
   *
   * @param environment what opens the journals
   * @param random chooses the moments
   */
  KilledWriters(Map<String, String> environment, SplittableRandom random) {
    this.environment = environment;
    this.random = random;
  }

  /**
   * Kills so many pairs at a new journal, and checks it after each.
   *
   * @param halfWritten asked after each pair: is a transaction half on the disk
   */
  void run(String place, int pairs, BooleanSupplier halfWritten) throws Exception {
    long before = found;
    for (int pair = 0; pair < pairs; pair++) {
      long first = kills * Writer.ENDLESS;
      long second = first + Writer.ENDLESS;
      List<Long> counts = killedTogether(place, first, second);
      interrupted += halfWritten.getAsBoolean() ? 1 : 0;
      try (Journal journal = Journals.open(place, environment)) {
        compare(journal, first, counts.get(0));
        compare(journal, second, counts.get(1));
        assertEquals(found - before, journal.headings(Selection.ALL).size());
        assertEquals(List.of(), journal.check());
      }
    }
  }

  private List<Long> killedTogether(String place, long first, long second) throws Exception {
    ExecutorService two = Executors.newFixedThreadPool(2);
    try {
      SplittableRandom moments = random.split();
      SplittableRandom others = random.split();
      Future<Long> one = two.submit(() -> killed(place, first, moments));
      Future<Long> other = two.submit(() -> killed(place, second, others));
      return List.of(one.get(), other.get());
    } finally {
      two.shutdown();
    }
  }

  private long killed(String place, long first, SplittableRandom moments)
      throws IOException, InterruptedException {
    Writer writer = Writer.start(place, first, Writer.ENDLESS, environment);
    if (moments.nextInt(4) == 0) {
      LockSupport.parkNanos(moments.nextLong(OPENING_NANOS));
    } else {
      writer.awaitFirst();
      LockSupport.parkNanos(moments.nextLong(STORING_NANOS));
    }
    return writer.kill();
  }

  private void compare(Journal journal, long first, long count) throws JournalException {
    long n = first;
    for (; ; n++) {
      Entry expected = WriterProcess.entry(n);
      Optional<Entry> entry = journal.entry(expected.heading().id());
      if (entry.isEmpty()) {
        break;
      }
      assertEquals(expected, entry.get());
    }
    kills++;
    reported += count;
    found += n - first;
    assertTrue(n - first >= count, () -> "lost: " + count + " were reported");
    assertTrue(n - first <= count + 1, () -> "more than the " + count + " reported and one");
  }

  /** The head of a Markdown table of campaigns. */
  static String tableHead() {
    return """
        | journal | kills | pairs that left a transaction half on the disk | entries reported \
        | stored but not yet reported | lost or half there |
        |---|---|---|---|---|---|
        """;
  }

  /** These kills as a row of the table; had anything been lost, it would not have come to this. */
  String row(String name) {
    return "| %s | %d | %d | %d | %d | 0 |%n"
        .formatted(name, kills, interrupted, reported, found - reported);
  }
}
