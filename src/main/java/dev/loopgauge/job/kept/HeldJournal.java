package dev.loopgauge.job.kept;

import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.store.JournalAddress;
import dev.loopgauge.journal.store.Journals;
import java.util.Map;
import java.util.Optional;

/**
 * The journal that results of one command are kept in: opened for the first, and held open for the
 * next. What fails on a journal that was held is tried once more on a new one: its server may have
 * been started again, or its file moved, between two results.
 */
public final class HeldJournal implements AutoCloseable {
  private final Map<String, String> environment;
  private Optional<Journal> open = Optional.empty();

  /** A journal that is not opened yet. */
  public HeldJournal(Map<String, String> environment) {
    this.environment = environment;
  }

  /** What is done with an open journal; doing it again must do no harm. */
  interface Work {
    void in(Journal journal) throws JournalException;
  }

  /**
   * Does it.
   *
   * @throws JournalException when the journal can't be opened, or the work can't be done
   */
  synchronized void use(JournalAddress address, Work work) throws JournalException {
    boolean held = open.isPresent();
    try {
      work.in(opened(address));
    } catch (JournalException e) {
      close();
      if (!held) {
        throw e;
      }
      use(address, work);
    }
  }

  private Journal opened(JournalAddress address) throws JournalException {
    if (open.isEmpty()) {
      open = Optional.of(Journals.open(address, environment));
    }
    return open.get();
  }

  @Override
  public synchronized void close() {
    Optional<Journal> last = open;
    open = Optional.empty();
    try {
      if (last.isPresent()) {
        last.get().close();
      }
    } catch (JournalException e) {
      // What was kept is on the disk, and what failed before says more.
    }
  }
}
