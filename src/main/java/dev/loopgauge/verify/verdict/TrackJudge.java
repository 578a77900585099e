package dev.loopgauge.verify.verdict;

import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.Step;
import dev.loopgauge.estimate.result.Track;
import dev.loopgauge.verify.PlainNumber;
import dev.loopgauge.verify.TrackComparison;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Judges a delay that was followed through a recording. */
public final class TrackJudge {
  private TrackJudge() {}

  /**
   * The verdict over all windows.
   *
   * @param comparison how the windows compare with a budget, where there is one
   * @param picture how the path stands against its picture, where it has one
   */
  public static OverallVerdict of(
      Track track, Optional<TrackComparison> comparison, Optional<AspectVerdict> picture) {
    Optional<Finding> refusal = track.findings().stream().filter(Finding::refuses).findFirst();
    if (refusal.isPresent()) {
      return new OverallVerdict(
          List.of(AspectVerdict.undecided(Aspect.DELAY, refusal.get().text())));
    }
    List<AspectVerdict> aspects = new ArrayList<>();
    aspects.add(delay(comparison));
    aspects.add(lostSound(track));
    aspects.add(clocks(track));
    picture.ifPresent(aspects::add);
    return new OverallVerdict(aspects);
  }

  private static AspectVerdict delay(Optional<TrackComparison> comparison) {
    AspectVerdict worst = DelayJudge.of(comparison.map(TrackComparison::worst), Method.REFERENCED);
    String windows =
        comparison
            .filter(c -> c.outside() > 0)
            .map(c -> " in " + c.outside() + " of " + c.windows() + " windows, at most")
            .orElse("");
    return windows.isEmpty()
        ? worst
        : new AspectVerdict(worst.aspect(), worst.judgement(), worst.text() + windows);
  }

  private static AspectVerdict lostSound(Track track) {
    if (!track.steps().isEmpty()) {
      return AspectVerdict.of(Aspect.LOST_SOUND, false, jumps(track.steps()));
    }
    return finding(track, FindingCode.DROPOUT)
        .map(f -> AspectVerdict.of(Aspect.LOST_SOUND, false, f.text()))
        .orElseGet(() -> AspectVerdict.of(Aspect.LOST_SOUND, true, "the delay did not jump"));
  }

  private static String jumps(List<Step> steps) {
    Step first = steps.get(0);
    double change = first.changeSamples();
    return String.format(
        Locale.ROOT,
        "the delay jumped %s by %s%s samples at %s",
        steps.size() == 1 ? "once," : steps.size() + " times, first",
        change > 0 ? "+" : "",
        PlainNumber.of(change, 2),
        PlainNumber.clock(first.atSeconds()));
  }

  private static AspectVerdict clocks(Track track) {
    if (finding(track, FindingCode.CLOCKS_NOT_LOCKED).isPresent()) {
      return ClockJudge.notLocked(track.drift().orElseThrow());
    }
    return track
        .drift()
        .map(ClockJudge::locked)
        .orElseGet(
            () ->
                AspectVerdict.notJudged(Aspect.CLOCKS, "too few windows to tell the clocks apart"));
  }

  private static Optional<Finding> finding(Track track, FindingCode code) {
    return track.findings().stream().filter(f -> f.code() == code).findFirst();
  }
}
