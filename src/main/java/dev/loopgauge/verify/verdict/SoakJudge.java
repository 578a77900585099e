package dev.loopgauge.verify.verdict;

import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.HostCheck;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Judges a path that was measured again and again.
 *
 * @param level the delay since its last jump; empty where none was read
 * @param jumps in how many takes the delay jumped
 * @param lost in how many takes sound was lost or could not be played to its end
 * @param unreadable how many takes gave no number for another reason
 * @param drift how the clocks drift apart, where a take shows that they do
 */
public record SoakJudge(
    Optional<Measurement> level, int jumps, int lost, int unreadable, Optional<ClockDrift> drift) {
  /**
   * The verdict over all takes.
   *
   * @param picture how the path stands against its picture, where it has one
   */
  public OverallVerdict verdict(
      Optional<Comparison> comparison,
      Optional<HostCheck> hostCheck,
      Optional<AspectVerdict> picture) {
    List<AspectVerdict> aspects = new ArrayList<>();
    aspects.add(delay(comparison));
    aspects.add(
        AspectVerdict.of(
            Aspect.LOST_SOUND,
            lost == 0,
            lost == 0 ? "no sound was lost" : "sound was lost in " + takes(lost)));
    aspects.add(
        drift
            .map(ClockJudge::notLocked)
            .orElseGet(() -> AspectVerdict.of(Aspect.CLOCKS, true, "no take shows a drift")));
    hostCheck.flatMap(HostJudge::of).ifPresent(aspects::add);
    picture.ifPresent(aspects::add);
    return new OverallVerdict(aspects);
  }

  private AspectVerdict delay(Optional<Comparison> comparison) {
    if (level.isEmpty()) {
      return AspectVerdict.undecided(Aspect.DELAY, "no take could be read");
    }
    if (jumps > 0) {
      return AspectVerdict.of(Aspect.DELAY, false, "the delay jumped in " + takes(jumps));
    }
    AspectVerdict compared = DelayJudge.of(comparison, level.get().method());
    return unreadable > 0 && compared.judgement() != Judgement.BAD
        ? AspectVerdict.undecided(Aspect.DELAY, takes(unreadable) + " could not be read")
        : compared;
  }

  private static String takes(int count) {
    return count == 1 ? "1 take" : count + " takes";
  }
}
