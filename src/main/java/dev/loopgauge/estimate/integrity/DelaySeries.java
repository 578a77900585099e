package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.stats.OneStep;
import dev.loopgauge.stats.StraightLine;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How much later than the fitted path a return is, stretch by stretch of one reading.
 *
 * <p>An arrival x that is late by a little d leaves -d dx/dn. Over each of {@value #STRETCHES}
 * stretches d is read off by least squares, and counts by its sum of (dx/dn)^2. It holds for what
 * is small against the waves of the sound; beyond them it tells no more than that the delay isn't
 * one.
 *
 * @param times where each stretch starts, in samples from the start of the capture
 * @param delays in samples, 0 where nothing sounds
 * @param weights what each counts for, 0 or more
 * @param small whether each is known to be small against the waves of its sound
 */
@SuppressWarnings("ArrayRecordComponent") // read once within one test, never compared
public record DelaySeries(double[] times, double[] delays, double[] weights, boolean small) {
  /** Many enough to tell where a step is, few enough to be told from noise. */
  public static final int STRETCHES = 16;

  /**
   * What is left of a stretch, by what the fit makes of it, up to which its delay is surely small.
   * The filter that fits two delays best is half of each, and leaves (1 - r) / (1 + r) of what it
   * makes where both are alike by r (derived). This is at a tenth of a wave, where a line through
   * the slope reads 7 % too little.
   */
  public static final double LEFT = 0.1;

  /**
   * The series of one reading; empty where it is too short, or silent.
   *
   * @param windows what each window of it held
   */
  public static Optional<DelaySeries> of(List<LostSound.Heard> windows) {
    List<LostSound.Heard> stretches = LostSound.stretches(windows, STRETCHES);
    if (stretches.isEmpty()) {
      return Optional.empty();
    }
    double[] times = new double[STRETCHES];
    double[] delays = new double[STRETCHES];
    double[] weights = new double[STRETCHES];
    boolean sounds = false;
    boolean small = true;
    for (int i = 0; i < STRETCHES; i++) {
      LostSound.Heard sum = stretches.get(i);
      times[i] = sum.from();
      weights[i] = sum.steepness();
      delays[i] = sum.steepness() == 0 ? 0 : sum.lateness() / sum.steepness();
      sounds |= sum.steepness() > 0;
      small &= sum.residual() <= LEFT * sum.arrivals();
    }
    return sounds ? Optional.of(new DelaySeries(times, delays, weights, small)) : Optional.empty();
  }

  /**
   * By how many samples one sound is later than another, where their correlation is furthest from
   * 0; empty where that is at the end of what is searched.
   *
   * @param furthest how far is searched either way
   */
  public static OptionalDouble peak(double[] sent, double[] heard, int furthest) {
    int longest = Math.max(sent.length, heard.length);
    RealFft fft = new RealFft(RealFft.lengthFor(longest + furthest));
    double[] from = Arrays.copyOf(sent, fft.length());
    return peak(fft, from, Arrays.copyOf(heard, fft.length()), furthest);
  }

  /** The same of sounds with as much silence after them; both are changed. */
  private static OptionalDouble peak(RealFft fft, double[] sent, double[] heard, int furthest) {
    fft.forward(sent);
    fft.forward(heard);
    Packed.conjugate(sent);
    Packed.multiply(heard, sent);
    fft.inverse(heard);
    int best = -furthest;
    for (int lag = -furthest; lag <= furthest; lag++) {
      best = Math.abs(at(heard, lag)) > Math.abs(at(heard, best)) ? lag : best;
    }
    if (Math.abs(best) == furthest) {
      return OptionalDouble.empty();
    }
    double before = at(heard, best - 1);
    double after = at(heard, best + 1);
    double bend = before - 2 * at(heard, best) + after;
    return OptionalDouble.of(bend == 0 ? best : best - (after - before) / (2 * bend));
  }

  private static double at(double[] correlation, int lag) {
    return correlation[Math.floorMod(lag, correlation.length)];
  }

  /** The line through the delays. */
  public StraightLine line() {
    return StraightLine.weighted(times, delays, weights);
  }

  /** The step that explains the delays best, if there is one. */
  public Optional<OneStep> step() {
    return OneStep.of(delays, weights);
  }

  /** When a step happens, as a sample of the capture. */
  public int timeOf(OneStep step) {
    double length = times[1] - times[0];
    return (int) (times[step.at()] + step.share() * length);
  }
}
