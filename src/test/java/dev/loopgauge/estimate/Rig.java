package dev.loopgauge.estimate;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.ExponentialSweep;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Returns with something wrong, made from a sweep. */
public final class Rig {
  public static final SampleRate RATE = new SampleRate(48_000);
  public static final Signal SWEEP = ExponentialSweep.fullBand(1).render(RATE);
  private static final int LENGTH = 120_000;

  private Rig() {}

  /** The sweep later by some samples, exact to the arithmetic, times a factor. */
  public static double[] arrival(double delay, double gain) {
    RealFft fft = new RealFft(1 << 17);
    double[] spectrum = new double[fft.length()];
    SWEEP.copyTo(0, spectrum, 0, SWEEP.length());
    fft.forward(spectrum);
    Packed.fractionalDelay(spectrum, -delay);
    fft.inverse(spectrum);
    double[] arrival = new double[LENGTH];
    for (int i = 0; i < LENGTH; i++) {
      arrival[i] = gain * spectrum[i];
    }
    return arrival;
  }

  /** Several arrivals at once. */
  public static double[] sum(double[]... arrivals) {
    double[] sum = new double[LENGTH];
    for (double[] arrival : arrivals) {
      for (int i = 0; i < LENGTH; i++) {
        sum[i] += arrival[i];
      }
    }
    return sum;
  }

  /** A reading of the sweep against a return to which noise at a level is added. */
  public static Reading reading(double[] ret, double noiseDbfs, int start) {
    SplittableRandom random = new SplittableRandom(99 + start);
    double[] noisy = ret.clone();
    for (int i = 0; i < noisy.length; i++) {
      noisy[i] += Decibels.toFactor(noiseDbfs) * random.nextGaussian();
    }
    return new Reading(SWEEP, Signal.of(RATE, noisy), start);
  }

  /** One reading for each delay, two seconds and a half apart. */
  static List<Reading> turns(double... delays) {
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < delays.length; i++) {
      readings.add(reading(arrival(delays[i], 0.5), -80, i * LENGTH));
    }
    return readings;
  }
}
