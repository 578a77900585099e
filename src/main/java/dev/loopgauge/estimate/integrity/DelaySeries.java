package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.reading.Reading;
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
 */
@SuppressWarnings("ArrayRecordComponent") // read once within one test, never compared
public record DelaySeries(double[] times, double[] delays, double[] weights) {
  /** Many enough to tell where a step is, few enough to be told from noise. */
  public static final int STRETCHES = 16;

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
    DelaySeries series =
        new DelaySeries(new double[STRETCHES], new double[STRETCHES], new double[STRETCHES]);
    boolean sounds = false;
    for (int i = 0; i < STRETCHES; i++) {
      LostSound.Heard sum = stretches.get(i);
      series.times[i] = sum.from();
      series.weights[i] = sum.steepness();
      series.delays[i] = sum.steepness() == 0 ? 0 : sum.lateness() / sum.steepness();
      sounds |= sum.steepness() > 0;
    }
    return sounds ? Optional.of(series) : Optional.empty();
  }

  /**
   * The same stretches, each delay where its correlation with the reference peaks: of any size up
   * to a limit, but only as sure as so short a sound tells. Where none peaks within it, nothing
   * counts.
   *
   * @param delay about which they are looked for, in samples
   * @param furthest how far from it, in samples
   */
  public DelaySeries ofPeaks(Reading reading, int delay, int furthest) {
    int length = (int) (times[1] - times[0]);
    DelaySeries peaks =
        new DelaySeries(times, new double[delays.length], new double[delays.length]);
    for (int i = 0; i < delays.length; i++) {
      int from = (int) times[i] - reading.start();
      double[] sent = new double[length];
      double[] heard = new double[length];
      reading.reference().copyTo(from, sent, 0, length);
      reading.ret().copyTo(from + delay, heard, 0, length);
      OptionalDouble peak = peak(sent, heard, furthest);
      peaks.delays[i] = peak.orElse(0);
      peaks.weights[i] = peak.isPresent() ? weights[i] : 0;
    }
    return peaks;
  }

  /**
   * By how many samples one sound is later than another, where their correlation is furthest from
   * 0; empty where that is at the end of what is searched.
   *
   * @param furthest how far is searched either way
   */
  public static OptionalDouble peak(double[] sent, double[] heard, int furthest) {
    RealFft fft = new RealFft(RealFft.lengthFor(Math.max(sent.length, heard.length) + furthest));
    double[] from = Arrays.copyOf(sent, fft.length());
    double[] to = Arrays.copyOf(heard, fft.length());
    double[] correlation = new double[fft.length()];
    fft.forward(from);
    fft.forward(to);
    Packed.accumulateCrossSpectrum(from, to, correlation);
    fft.inverse(correlation);
    int best = -furthest;
    for (int lag = -furthest; lag <= furthest; lag++) {
      best = Math.abs(at(correlation, lag)) > Math.abs(at(correlation, best)) ? lag : best;
    }
    if (Math.abs(best) == furthest) {
      return OptionalDouble.empty();
    }
    double before = at(correlation, best - 1);
    double after = at(correlation, best + 1);
    double bend = before - 2 * at(correlation, best) + after;
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
