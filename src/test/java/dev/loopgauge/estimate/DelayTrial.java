package dev.loopgauge.estimate;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Signal;
import java.util.SplittableRandom;

/** A return of exactly known delay, and the bound that no unbiased estimate of it can beat. */
public final class DelayTrial {
  private static final double PASSED = 0.9;
  private static final double CUT = 0.97;
  private static final int TAIL = 256;

  private final Signal reference;
  private final double[] spectrum;
  private final RealFft fft;
  private final double slopeEnergy;

  /** Trials with one reference; the return may be up to as late as the reference is long. */
  public DelayTrial(Signal reference) {
    this.reference = reference;
    this.fft = new RealFft(RealFft.lengthFor(2 * reference.length()));
    this.spectrum = new double[fft.length()];
    reference.copyTo(0, spectrum, 0, reference.length());
    fft.forward(spectrum);
    double sum = 0;
    for (int k = 1; k < fft.length() / 2; k++) {
      double omega = 2 * Math.PI * k / fft.length();
      sum += omega * omega * Packed.power(spectrum, k);
    }
    this.slopeEnergy = sum * 2 / fft.length();
  }

  /**
   * A signal without the uppermost part of its band, which no converter passes and where a delay by
   * a part of a sample has no meaning; a maximum-length sequence reaches up there.
   */
  public static Signal asConvertersPass(Signal signal) {
    RealFft fft = new RealFft(RealFft.lengthFor(2 * signal.length()));
    double[] packed = new double[fft.length()];
    signal.copyTo(0, packed, fft.length() / 4, signal.length());
    fft.forward(packed);
    packed[1] = 0;
    for (int k = 1; k < fft.length() / 2; k++) {
      double part = 2.0 * k / fft.length();
      double above = Math.max(0, Math.min(1, (part - PASSED) / (CUT - PASSED)));
      double factor = 0.5 + 0.5 * Math.cos(Math.PI * above);
      packed[2 * k] *= factor;
      packed[2 * k + 1] *= factor;
    }
    fft.inverse(packed);
    return Signal.of(signal.rate(), packed)
        .slice(fft.length() / 4 - TAIL, fft.length() / 4 + signal.length() + TAIL);
  }

  /** The standard deviation of white noise at a signal-to-noise ratio per sample. */
  public double noise(double snrDb, double gain) {
    return Math.abs(gain) * reference.rms() / Decibels.toFactor(snrDb);
  }

  /**
   * The Cramer-Rao bound in samples: s / (|g| sqrt(sum (dx/dn)^2)) (S. M. Kay, Estimation Theory,
   * example 3.13, from memory; derived).
   */
  public double bound(double noise, double gain) {
    return noise / (Math.abs(gain) * Math.sqrt(slopeEnergy));
  }

  /** The reference, later by {@code delay} samples and times {@code gain}, in white noise. */
  public Reading reading(double delay, double gain, double noise, SplittableRandom random) {
    double[] y = spectrum.clone();
    Packed.fractionalDelay(y, -delay);
    fft.inverse(y);
    for (int i = 0; i < y.length; i++) {
      y[i] = gain * y[i] + noise * random.nextGaussian();
    }
    return new Reading(reference, Signal.of(reference.rate(), y));
  }
}
