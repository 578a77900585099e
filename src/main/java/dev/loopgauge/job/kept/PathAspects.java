package dev.loopgauge.job.kept;

import dev.loopgauge.journal.AspectChange;
import dev.loopgauge.journal.AspectChanges;
import dev.loopgauge.journal.ComparedAspect;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.MeasuredSummary;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Compares each entry of a path with the one before it, over all aspects but the delay, whose steps
 * the history tells by all entries.
 */
final class PathAspects {
  private PathAspects() {}

  /**
   * The aspects that changed, by the ids of the entries.
   *
   * @param entries the last entries with a number that stand, in their order
   * @param edition gives their documents by one edition
   */
  static Map<UUID, List<ComparedAspect>> changed(List<Entry> entries, OneEdition edition) {
    Map<UUID, List<ComparedAspect>> changed = new HashMap<>();
    Optional<MeasuredSummary> before = Optional.empty();
    for (Entry entry : entries) {
      MeasuredSummary told = edition.document(entry).summary();
      before
          .map(was -> AspectChanges.beside(was, told).stream().map(AspectChange::aspect))
          .ifPresent(aspects -> changed.put(entry.heading().id(), aspects.distinct().toList()));
      before = Optional.of(told);
    }
    return changed;
  }
}
