package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.integrity.DelaySeries;
import dev.loopgauge.estimate.integrity.GainModulation;
import dev.loopgauge.estimate.integrity.LostSound;
import dev.loopgauge.estimate.integrity.PhaseJump;
import dev.loopgauge.estimate.integrity.RepeatLevels;
import dev.loopgauge.estimate.integrity.Splice;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.stats.Odds;
import dev.loopgauge.stats.OneStep;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A level that steps once, so that the sound on both sides comes by one filter and two gains.
 *
 * <p>Where it may have stepped, the gains of short stretches against the fitted path say. Each
 * side's own filter then makes of the other's reference what that should have been: one is louder
 * than that by the step, the other fainter. Noise in a filter makes both fainter alike, so it is no
 * step, and the square root of the ratio of both gains is free of it (derived). Several sweeps of
 * one path are alike ({@link RepeatLevels}); in one, where each side has frequencies of its own,
 * the instant itself must show it ({@link PhaseJump}).
 *
 * @param at where it steps, in samples from the start of the capture; empty for somewhere between
 *     the first and the last of several readings
 * @param byDb by how much it rises, in dB
 */
public record LevelStep(OptionalInt at, double byDb) {
  /** The step in the readings behind a fit, within one or between them, if there is one. */
  public static Optional<LevelStep> of(Spectra spectra, Fit fit) {
    List<LostSound> heard = fit.residualTests().lostSound();
    Optional<LevelStep> within = within(spectra, heard, (int) Math.rint(fit.measured().lag()));
    return within.isPresent() ? within : between(heard);
  }

  /** The step in one of the readings that are sweeps, if there is one. */
  public static Optional<LevelStep> inSweep(Spectra spectra, Fit fit) {
    for (Reading reading : spectra.readings()) {
      if (Splice.isShort(reading) && Splice.isSweep(reading.reference())) {
        int delay = (int) Math.rint(fit.measured().lag());
        Optional<LevelStep> step =
            PhaseJump.ofLevel(reading, delay)
                .filter(jump -> Math.abs(jump.louderDb()) > GainModulation.LEAST_DB)
                .map(
                    jump ->
                        new LevelStep(
                            OptionalInt.of(reading.start() + jump.at()), jump.louderDb()));
        if (step.isPresent()) {
          return step;
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<LevelStep> within(Spectra spectra, List<LostSound> heard, int delay) {
    for (int i = 0; i < heard.size(); i++) {
      Reading reading = spectra.readings().get(i);
      OptionalInt place = place(heard.get(i).windows());
      if (place.isPresent() && Splice.asksFor(reading, place.getAsInt() - reading.start())) {
        int at = place.getAsInt() - reading.start();
        Optional<LevelStep> step = at(reading, at, delay, spectra.reach());
        if (step.isPresent()) {
          return step;
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<LevelStep> between(List<LostSound> heard) {
    OptionalDouble byDb = RepeatLevels.stepDb(heard, DelayStep.FALSE_ALARMS);
    return byDb.isPresent() && Math.abs(byDb.getAsDouble()) > GainModulation.LEAST_DB
        ? Optional.of(new LevelStep(OptionalInt.empty(), byDb.getAsDouble()))
        : Optional.empty();
  }

  /** Where the gains of stretches step, in samples of the capture as sent. */
  private static OptionalInt place(List<LostSound.Heard> windows) {
    List<LostSound.Heard> stretches = LostSound.stretches(windows, DelaySeries.STRETCHES);
    double[] gains = new double[stretches.size()];
    double[] weights = new double[gains.length];
    for (int i = 0; i < gains.length; i++) {
      LostSound.Heard heard = stretches.get(i);
      gains[i] = heard.arrivals() == 0 ? 0 : heard.product() / heard.arrivals();
      weights[i] = heard.arrivals();
    }
    Optional<OneStep> step = OneStep.of(gains, weights);
    return step.isPresent() && isLarge(step.get()) && step.get().isThere(DelayStep.FALSE_ALARMS)
        ? OptionalInt.of(timeOf(step.get(), stretches))
        : OptionalInt.empty();
  }

  /** Gains are of about 1: a step that is told moves them by more than half of the least. */
  private static boolean isLarge(OneStep step) {
    return Decibels.ofFactor(1 + Math.abs(step.value())) > GainModulation.LEAST_DB / 2;
  }

  private static int timeOf(OneStep step, List<LostSound.Heard> stretches) {
    int length = stretches.get(1).from() - stretches.get(0).from();
    return (int) (stretches.get(step.at()).from() + step.share() * length);
  }

  private static Optional<LevelStep> at(Reading reading, int at, int delay, int reach) {
    Reading before = reading.alone(0, at, delay);
    Reading after = reading.alone(at, reading.reference().length(), delay);
    OtherSide later = OtherSide.of(before, after, reach);
    OtherSide earlier = OtherSide.of(after, before, reach);
    boolean opposite = later.gain() > 1 ? earlier.gain() < 1 : earlier.gain() > 1;
    double least = Math.min(later.gain(), earlier.gain());
    double byDb = (Decibels.ofFactor(later.gain()) - Decibels.ofFactor(earlier.gain())) / 2;
    boolean step = opposite && least > 0 && Math.abs(byDb) > GainModulation.LEAST_DB;
    return step && isCertain(later) && isCertain(earlier)
        ? Optional.of(new LevelStep(OptionalInt.of(reading.start() + delay + at), byDb))
        : Optional.empty();
  }

  /** Whether another gain explains a side so much better that it is beyond doubt. */
  private static boolean isCertain(OtherSide side) {
    double odds = side.values() / 2 * Math.log(side.residual() / (1 - side.squaredCorrelation(0)));
    return odds > Odds.BEYOND_DOUBT;
  }
}
