package dev.loopgauge.job.kept;

import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.journal.AspectChange;
import dev.loopgauge.journal.AspectChanges;
import dev.loopgauge.journal.Cause;
import dev.loopgauge.journal.Causes;
import dev.loopgauge.journal.Compared;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.PathPair;
import dev.loopgauge.report.logged.KeptDocument;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.verify.Explanation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Compares entries of a journal two by two. */
public record KeptPairs(Journal journal) {
  private static final Cause CARD =
      new Cause(
          Method.UNCALIBRATED.label(),
          "the sound card's own delay is in the numbers and may be what moved;"
              + " measure with a reference",
          Cause.Standing.RECORDED);

  private static final Cause CLOCKS =
      new Cause(
          Explanation.DRIFT,
          "the clocks ran apart, so that each reading gave another delay;"
              + " sync both devices to one word clock and measure again",
          Cause.Standing.EXPLAINS);

  /** An entry and its document. */
  private record Side(Entry entry, KeptDocument document) {
    static Side of(Entry entry) {
      return new Side(entry, KeptDocument.of(entry));
    }

    boolean holdsTheCard() {
      return document.method().equals(Optional.of(Method.UNCALIBRATED.label()));
    }
  }

  /**
   * What is not as it was between the measurements of each pair, and why.
   *
   * @throws JournalException when the journal can't be read
   */
  public List<Compared> compared(List<PathPair> pairs) throws JournalException {
    List<Compared> compared = new ArrayList<>();
    for (PathPair pair : pairs) {
      compared.add(compared(pair));
    }
    return compared;
  }

  private Compared compared(PathPair pair) throws JournalException {
    Optional<Side> before = side(pair.first());
    Optional<Side> after = side(pair.second());
    if (before.isEmpty() || after.isEmpty()) {
      return new Compared(pair, List.of(), List.of());
    }
    List<AspectChange> changes =
        AspectChanges.between(
            pair, before.get().document().summary(), after.get().document().summary());
    boolean moved = changes.stream().anyMatch(AspectChange.Delay.class::isInstance);
    if (moved) {
      return new Compared(pair, changes, causes(pair, before.get(), after.get()));
    }
    return new Compared(
        pair,
        changes,
        changes.isEmpty() ? List.of() : Causes.recorded(before.get().entry(), after.get().entry()));
  }

  private Optional<Side> side(Optional<Heading> heading) throws JournalException {
    return heading.isEmpty() ? Optional.empty() : journal.entry(heading.get().id()).map(Side::of);
  }

  /**
   * What may have made the delay another between two entries.
   *
   * @throws JournalException when the journal can't be read
   */
  public List<Cause> causes(Heading first, Heading second) throws JournalException {
    Optional<Side> before = side(Optional.of(first));
    Optional<Side> after = side(Optional.of(second));
    return before.isPresent() && after.isPresent()
        ? causes(
            new PathPair(first.path(), Optional.of(first), Optional.of(second)),
            before.get(),
            after.get())
        : List.of();
  }

  private static List<Cause> causes(PathPair pair, Side before, Side after) {
    Optional<Latency> later = pair.later();
    if (later.isEmpty()) {
      return List.of();
    }
    List<Cause> causes = new ArrayList<>();
    if (before.holdsTheCard() || after.holdsTheCard()) {
      causes.add(CARD);
    }
    if (AspectChanges.clocksRanApart(before.document().summary(), after.document().summary())) {
      causes.add(CLOCKS);
      causes.addAll(Causes.recorded(before.entry(), after.entry()));
    } else {
      double uncertainty = pair.shift().orElseThrow().uncertaintySamples();
      causes.addAll(Causes.of(before.entry(), after.entry(), later.get(), uncertainty));
    }
    return List.copyOf(causes);
  }
}
