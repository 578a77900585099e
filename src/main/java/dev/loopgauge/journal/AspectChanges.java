package dev.loopgauge.journal;

import dev.loopgauge.estimate.result.FindingCode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Compares two measurements of a path over all that they tell. What one of them could not tell is
 * not compared.
 */
public final class AspectChanges {
  /**
   * The least change of level that counts, in dB: about the least that is heard (Fastl and Zwicker,
   * "Psychoacoustics", chapter 7, from memory).
   */
  private static final double LEAST_LEVEL_DB = 1;

  /**
   * The noise that counts is this much nearer to the sound, in dB: one that is heard twice as loud
   * (S. S. Stevens's sone, from memory).
   */
  private static final double LEAST_NOISE_DB = 10;

  /**
   * Noise further below the sound than this nobody hears, in dB: from the faintest sound to the
   * loudest that an ear bears (from memory). A digital path has far less, more or less by chance.
   */
  private static final double INAUDIBLE_DB = 120;

  /** The findings that each are about an aspect. */
  private static final Map<FindingCode, ComparedAspect> FOUND =
      Map.of(
          FindingCode.TWO_ARRIVALS, ComparedAspect.ARRIVALS,
          FindingCode.DROPOUT, ComparedAspect.LOST_SOUND,
          FindingCode.CLOCKS_NOT_LOCKED, ComparedAspect.CLOCKS,
          FindingCode.LEVEL_MOVES, ComparedAspect.LEVEL,
          FindingCode.CLIPPED, ComparedAspect.CLIPPING);

  private static final List<FindingCode> TEARING =
      List.of(
          FindingCode.DROPOUT,
          FindingCode.CLIPPED,
          FindingCode.LEVEL_MOVES,
          FindingCode.CLOCKS_NOT_LOCKED);

  private final MeasuredSummary before;
  private final MeasuredSummary after;
  private final List<AspectChange> changes = new ArrayList<>();

  private AspectChanges(MeasuredSummary before, MeasuredSummary after) {
    this.before = before;
    this.after = after;
  }

  /**
   * What changed, in the order of the aspects; empty where the earlier measurement has no number,
   * or one of them is missing.
   *
   * @param pair the two measurements
   * @param before what the earlier one tells
   * @param after what the later one tells
   */
  public static List<AspectChange> between(
      PathPair pair, MeasuredSummary before, MeasuredSummary after) {
    boolean compared =
        pair.first().flatMap(Heading::delay).isPresent() && pair.second().isPresent();
    return compared ? new AspectChanges(before, after).found(pair) : List.of();
  }

  /**
   * What changed beside the delay between two measurements with a number, in the order of the
   * aspects.
   */
  public static List<AspectChange> beside(MeasuredSummary before, MeasuredSummary after) {
    AspectChanges changes = new AspectChanges(before, after);
    changes.numbers();
    return changes.ordered();
  }

  /** Whether the clocks ran apart at one of two measurements, so that their delays say little. */
  public static boolean clocksRanApart(MeasuredSummary before, MeasuredSummary after) {
    String code = FindingCode.CLOCKS_NOT_LOCKED.label();
    return before.findings().containsKey(code) || after.findings().containsKey(code);
  }

  private List<AspectChange> found(PathPair pair) {
    if (pair.shift().isPresent()) {
      pair.shift()
          .filter(shift -> shift.moved())
          .map(shift -> new AspectChange.Delay(shift, pair.later().orElseThrow().ms()))
          .ifPresent(changes::add);
      numbers();
    } else {
      changes.add(refused());
    }
    return ordered();
  }

  private List<AspectChange> ordered() {
    FOUND.forEach((code, aspect) -> finding(aspect, code.label()));
    changes.sort((one, other) -> one.aspect().compareTo(other.aspect()));
    return CopyChanges.toldOnce(List.copyOf(changes));
  }

  private AspectChange refused() {
    boolean silent = has(FindingCode.NO_RETURN) || has(FindingCode.WEAK_RETURN);
    return new AspectChange.Refused(
        silent,
        Arrays.stream(FindingCode.values())
            .filter(code -> !FOUND.containsKey(code))
            .map(code -> after.findings().get(code.label()))
            .filter(Objects::nonNull)
            .map(MeasuredSummary.Told::text)
            .findFirst());
  }

  private boolean has(FindingCode code) {
    return after.findings().containsKey(code.label());
  }

  private void finding(ComparedAspect aspect, String code) {
    MeasuredSummary.Told was = before.findings().get(code);
    MeasuredSummary.Told is = after.findings().get(code);
    if ((was == null) != (is == null)) {
      changes.add(new AspectChange.Found(aspect, is == null ? was : is, is == null));
    }
  }

  private void numbers() {
    after
        .inverted()
        .filter(now -> before.inverted().filter(was -> !was.equals(now)).isPresent())
        .ifPresent(now -> changes.add(new AspectChange.Polarity(now)));
    changes.addAll(CopyChanges.between(before.copies(), after.copies()));
    levelChange().filter(this::isHeard).map(AspectChange.Level::new).ifPresent(changes::add);
    ResponseChange.between(before.octaves(), after.octaves()).ifPresent(changes::add);
    if (!isTorn(before) && !isTorn(after)) {
      noise();
    }
  }

  private Optional<Double> levelChange() {
    return before.levelDb().flatMap(was -> after.levelDb().map(is -> is - was));
  }

  private boolean isHeard(double byDb) {
    double uncertainty = Math.hypot(before.levelUncertaintyDb(), after.levelUncertaintyDb());
    return Math.abs(byDb) > Math.max(LEAST_LEVEL_DB, uncertainty);
  }

  /**
   * Whether the residual, which noise is told by, holds the sound itself: where sound is lost or
   * clipped, its level moves, or the clocks run apart.
   */
  private static boolean isTorn(MeasuredSummary summary) {
    return TEARING.stream().anyMatch(code -> summary.findings().containsKey(code.label()));
  }

  /** The noise of the room stays where it is when the sound gets quieter: that is no new noise. */
  private void noise() {
    double quieter = Math.min(0, levelChange().orElse(0.0));
    before
        .signalToNoiseDb()
        .map(was -> Math.min(was, INAUDIBLE_DB))
        .flatMap(was -> after.signalToNoiseDb().map(is -> was - is + quieter))
        .filter(lower -> lower >= LEAST_NOISE_DB)
        .map(AspectChange.Noise::new)
        .ifPresent(changes::add);
  }
}
