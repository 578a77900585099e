package dev.loopgauge.report.logged;

import dev.loopgauge.journal.AspectChange;
import dev.loopgauge.journal.Compared;
import dev.loopgauge.journal.ComparedAspect;
import dev.loopgauge.journal.PathPair;
import dev.loopgauge.journal.PathPair.Standing;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.verify.Shift;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A path measured twice, as documents hold it.
 *
 * @param first the earlier measurement; null where it is missing
 * @param second the later one
 * @param differenceSamples how much later the second is, at its rate; null where a number is
 *     missing
 * @param causes what may have made it so
 * @param changedAspects what is not as it was, each aspect once
 * @param changes the same in words
 * @param notes what to know of the two numbers, one sentence each; left out where there is nothing
 */
public record ComparedRecord(
    Optional<String> path,
    Standing standing,
    Optional<ListedRecord> first,
    Optional<ListedRecord> second,
    Optional<BigDecimal> differenceSamples,
    Optional<BigDecimal> differenceMs,
    Optional<BigDecimal> uncertaintySamples,
    List<CauseRecord> causes,
    List<ComparedAspect> changedAspects,
    List<ChangeRecord> changes,
    List<String> notes)
    implements Sparse {
  static ComparedRecord of(Compared compared) {
    PathPair pair = compared.pair();
    Optional<Latency> later = pair.later();
    double uncertainty = pair.shift().map(Shift::uncertaintySamples).orElse(0.0);
    return new ComparedRecord(
        pair.path(),
        compared.standing(),
        pair.first().map(ListedRecord::of),
        pair.second().map(ListedRecord::of),
        later.map(latency -> Written.samples(latency.samples(), uncertainty)),
        later.map(latency -> ms(latency, uncertainty)),
        pair.shift().map(shift -> Written.uncertainSamples(shift.uncertaintySamples())),
        CauseRecord.all(compared.causes()),
        compared.changes().stream().map(AspectChange::aspect).distinct().toList(),
        ChangeRecord.all(compared.changes()),
        compared.notes());
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("notes");
  }

  private static BigDecimal ms(Latency later, double uncertaintySamples) {
    return Written.ms(later.ms(), uncertaintySamples * 1000 / later.rate().hertz());
  }

  /** The name of the path, cut to this many characters. */
  String name(int most) {
    return path.map(name -> OneLine.brief(name, most)).orElse("(no path named)");
  }

  /** The aspects that changed, in words. */
  String aspects() {
    return hasSecond()
        ? changedAspects.stream().map(AspectWords::name).collect(Collectors.joining(", "))
        : "no reading";
  }

  /**
   * Why the path could not be compared.
   *
   * @param before what the first measurements are called
   * @param after what the second ones are called
   */
  String missing(String before, String after) {
    if (first.isEmpty()) {
      return "not measured " + before;
    }
    if (second.isEmpty()) {
      return "not measured " + after;
    }
    boolean neither = !hasFirst() && !hasSecond();
    String side = hasFirst() ? after : before;
    return "no trustworthy number " + (neither ? before + " nor " + after : side);
  }

  /** Whether the earlier measurement has a number. */
  boolean hasFirst() {
    return first.flatMap(ListedRecord::delay).isPresent();
  }

  /** Whether the later measurement has a number. */
  boolean hasSecond() {
    return second.flatMap(ListedRecord::delay).isPresent();
  }
}
