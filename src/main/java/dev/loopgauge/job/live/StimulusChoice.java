package dev.loopgauge.job.live;

import dev.loopgauge.job.Refusals;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.StimulusKind;
import java.util.Optional;

/**
 * What to play. What is empty comes from a profile, or is the default: a sweep of 1 s at -20 dBFS,
 * three times, for delays up to 0.2 s or, where the path's budget is known, twice as long and 0.1 s
 * more.
 *
 * @param kind what it is
 * @param seconds how long it lasts
 * @param levelDbfs its peak
 * @param loud whether the peak may be above {@value #LOUDEST_DBFS} dBFS
 * @param repeats how many times it is played
 * @param maxDelaySeconds the longest delay to look for
 */
public record StimulusChoice(
    Optional<StimulusKind> kind,
    Optional<Double> seconds,
    Optional<Double> levelDbfs,
    boolean loud,
    Optional<Integer> repeats,
    Optional<Double> maxDelaySeconds) {
  /** As the profile says, or the default. */
  public static final StimulusChoice NONE =
      new StimulusChoice(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          false,
          Optional.empty(),
          Optional.empty());

  /** The loudest peak without {@link #loud}, in dBFS. */
  static final double LOUDEST_DBFS = -6;

  /** What a soak plays at for a long time, in dBFS. */
  private static final double SOFT_DBFS = -40;

  private static final MeasurementPlan DEFAULT =
      new MeasurementPlan(new PlayedStimulus(StimulusKind.SWEEP, 1, -20), 3, 0.2);

  /** What a path may come later than its budget and still be measured, as a factor and in s. */
  private static final double TIMES_ITS_BUDGET = 2;

  private static final double MORE_SECONDS = 0.1;

  /**
   * What to play.
   *
   * @param loopSeconds how late the path is by its budget, 0 where that isn't known
   * @throws UsageException when a value is out of range, or it would be loud and that wasn't
   *     allowed
   */
  MeasurementPlan plan(Optional<Profile> profile, double loopSeconds) {
    MeasurementPlan base = profile.map(Profile::plan).orElse(DEFAULT);
    PlayedStimulus stimulus = base.stimulus();
    MeasurementPlan plan =
        Refusals.asUsage(
            () ->
                new MeasurementPlan(
                    new PlayedStimulus(
                        kind.orElse(stimulus.kind()),
                        seconds.orElse(stimulus.seconds()),
                        levelDbfs.orElse(stimulus.levelDbfs())),
                    repeats.orElse(base.repeats()),
                    maxDelaySeconds.orElse(longest(base, loopSeconds))));
    if (plan.stimulus().levelDbfs() > LOUDEST_DBFS && !loud) {
      throw new UsageException(
          "expected a level of at most -6 dBFS, found " + plan.stimulus().levelDbfs() + " dBFS",
          "--loud allows it, for a path with nothing at its end that sounds");
    }
    return plan;
  }

  private static double longest(MeasurementPlan base, double loopSeconds) {
    double needed = TIMES_ITS_BUDGET * loopSeconds + MORE_SECONDS;
    return Math.min(MeasurementPlan.LONGEST_SECONDS, Math.max(base.maxDelaySeconds(), needed));
  }

  /** A plan to play for a long time: the same at -40 dBFS, unless a level was asked for. */
  MeasurementPlan soft(MeasurementPlan plan) {
    PlayedStimulus stimulus = plan.stimulus();
    double level = levelDbfs.orElse(Math.min(stimulus.levelDbfs(), SOFT_DBFS));
    return new MeasurementPlan(
        new PlayedStimulus(stimulus.kind(), stimulus.seconds(), level),
        plan.repeats(),
        plan.maxDelaySeconds());
  }
}
