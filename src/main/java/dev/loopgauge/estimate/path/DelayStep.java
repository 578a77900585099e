package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.integrity.DelaySeries;
import dev.loopgauge.estimate.integrity.LostSound;
import dev.loopgauge.estimate.integrity.Splice;
import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.stats.OneStep;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A delay that steps once within a reading, by as little as a sample, so that both sides come by
 * one filter and two delays.
 *
 * <p>Where it may have stepped, the delays of short stretches say ({@link DelaySeries}). The filter
 * that the louder side alone is fitted with then makes of the other side's reference what it should
 * have been: how much later the return comes than that is the step, whatever the filter. In one
 * sweep, where each side has frequencies of its own, nothing is told.
 *
 * @param splice where and by how much
 * @param odds the logarithm of likelihoods by which a step explains the stretches better than a
 *     drift does, above 0
 */
public record DelayStep(Splice splice, double odds) {
  /** How often a place is looked at in a reading with one delay, at most: as often as a drift. */
  static final double FALSE_ALARMS = 1.0 / 31_000;

  /** The least logarithm of likelihoods by which a step explains more, as for ambiguity: e^16. */
  static final double BEYOND_DOUBT = 16;

  /** Whether a drift is beyond doubt a worse explanation. */
  public boolean isNoDrift() {
    return odds > BEYOND_DOUBT;
  }

  /** The step in one of the readings behind a fit, if there is one. */
  public static Optional<DelayStep> of(Spectra spectra, Fit fit) {
    int delay = (int) Math.rint(fit.measured().lag());
    List<LostSound> heard = fit.residualTests().lostSound();
    for (int i = 0; i < heard.size(); i++) {
      Reading reading = spectra.readings().get(i);
      Optional<DelayStep> step = of(reading, heard.get(i).windows(), delay, spectra.reach());
      if (step.isPresent()) {
        return step;
      }
    }
    return Optional.empty();
  }

  private static Optional<DelayStep> of(
      Reading reading, List<LostSound.Heard> windows, int delay, int reach) {
    if (reading.reference().length() > Splice.LONGEST_SECONDS * reading.rate().hertz()) {
      return Optional.empty();
    }
    Optional<DelaySeries> near = DelaySeries.of(windows);
    if (near.isEmpty()) {
      return Optional.empty();
    }
    Optional<DelayStep> step = in(near.get(), reading, delay, reach);
    return step.isPresent() || near.get().small()
        ? step
        : in(near.get().ofPeaks(reading, delay, reach), reading, delay, reach);
  }

  private static Optional<DelayStep> in(DelaySeries series, Reading reading, int delay, int reach) {
    Optional<OneStep> step = series.step();
    if (step.isEmpty() || !step.get().isThere(FALSE_ALARMS)) {
      return Optional.empty();
    }
    double odds = step.get().oddsAgainst(series.line());
    if (odds <= 0) {
      return Optional.empty();
    }
    int at = series.timeOf(step.get()) - reading.start();
    double later = Splice.sameBand(reading.reference(), at) ? later(reading, at, delay, reach) : 0;
    Splice splice = new Splice(reading.start() + delay + at, OptionalDouble.of(later));
    return later == 0 ? Optional.empty() : Optional.of(new DelayStep(splice, odds));
  }

  /** By how much what follows a sample of the reference is later than what was before. */
  private static double later(Reading reading, int at, int delay, int reach) {
    Reading before = reading.alone(0, at, delay);
    Reading after = reading.alone(at, reading.reference().length(), delay);
    return Loudness.of(before.reference()).energy() > Loudness.of(after.reference()).energy()
        ? later(before, after, reach)
        : -later(after, before, reach);
  }

  /**
   * By how much another side is later than the filter of a side makes it; 0 where it isn't, or by
   * less than half a sample: one that is lost or repeated moves the delay by 1.
   */
  private static double later(Reading fitted, Reading other, int reach) {
    OtherSide side = OtherSide.of(fitted, other, reach);
    double later = DelaySeries.peak(side.due(), side.heard(), reach).orElse(0);
    double closer =
        (1 - side.squaredCorrelation(0)) / (1 - side.squaredCorrelation((int) Math.rint(later)));
    return side.values() / 2 * Math.log(closer) > BEYOND_DOUBT ? later : 0;
  }
}
