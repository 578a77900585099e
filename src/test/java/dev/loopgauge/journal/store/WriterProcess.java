package dev.loopgauge.journal.store;

import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.When;
import java.util.List;
import java.util.Optional;

/**
 * A process of its own that stores one entry after the other. Arguments: the journal, the number of
 * its first entry, how many. After each one it says {@value #STORED}; where one can't be stored, it
 * says {@value #FAILED} and why, and ends.
 */
final class WriterProcess {
  static final String STORED = "stored";
  static final String FAILED = "failed: ";

  private WriterProcess() {}

  /** Stores the entries. */
  public static void main(String[] args) throws JournalException {
    long first = Long.parseLong(args[1]);
    try (Journal journal = Journals.open(args[0], System.getenv())) {
      for (long n = first; n < first + Long.parseLong(args[2]); n++) {
        journal.append(List.of(entry(n)));
        System.out.println(STORED);
      }
    } catch (JournalException e) {
      System.out.println(FAILED + e.getMessage());
      System.err.println(e.getMessage() + ": " + e.getCause());
    }
  }

  /** The n-th entry: between nothing and a dozen pages of the database. */
  static Entry entry(long n) {
    Heading heading = Entries.heading(n, "Harbour, Friday", When.DURING, "vocal-house", 595);
    Entry plain = Entries.entry(heading);
    return new Entry(
        heading,
        Optional.of("note ".repeat((int) (n * 7919 % 10_000))),
        plain.setup(),
        plain.document(),
        plain.chain(),
        plain.card(),
        plain.capture(),
        plain.toolVersion());
  }
}
