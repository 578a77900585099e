package dev.loopgauge.job.kept;

import dev.loopgauge.journal.AspectChange;
import dev.loopgauge.journal.AspectChanges;
import dev.loopgauge.journal.ComparedAspect;
import dev.loopgauge.journal.Corrections;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.MeasuredSummary;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.report.logged.KeptDocument;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;

/**
 * Compares each entry of a path with the one before it, over all aspects but the delay, whose steps
 * the history tells by all entries. Holds two entries at a time.
 */
public final class PathAspects {
  /** Documents take far longer to read than headings do: these are 50 shows, before and after. */
  private static final int MOST = 100;

  private final Map<UUID, List<ComparedAspect>> changed = new HashMap<>();
  private final Corrections corrections;
  private Optional<MeasuredSummary> before = Optional.empty();

  private PathAspects(Corrections corrections) {
    this.corrections = corrections;
  }

  /**
   * The aspects that changed, of the last entries by their ids.
   *
   * @param path the path
   * @param show the show, where only its entries count
   * @throws JournalException when the journal can't be read
   */
  public static Map<UUID, List<ComparedAspect>> changed(
      Journal journal, String path, Optional<String> show) throws JournalException {
    Selection last = new Selection(show, Optional.of(path), Optional.empty(), OptionalInt.of(MOST));
    PathAspects aspects = new PathAspects(journal.corrections());
    journal.each(last, kept -> aspects.add(kept.entry()));
    return aspects.changed;
  }

  private void add(Entry entry) {
    Heading next = entry.heading();
    if (!corrections.stands(next.id()) || next.delay().isEmpty()) {
      return;
    }
    MeasuredSummary told = KeptDocument.of(entry).summary();
    before
        .map(was -> AspectChanges.beside(was, told).stream().map(AspectChange::aspect))
        .ifPresent(aspects -> changed.put(next.id(), aspects.distinct().toList()));
    before = Optional.of(told);
  }
}
