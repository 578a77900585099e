package dev.loopgauge.signal;

/**
 * A sine whose frequency rises exponentially: x(t) = sin(2 pi f1 L (e^(t/L) - 1)) with L = T /
 * ln(f2 / f1).
 *
 * <p>Source: A. Farina, "Simultaneous measurement of impulse response and distortion with a
 * swept-sine technique", AES 108th Convention, 2000, preprint 5093. Distortion of order n arrives L
 * ln n seconds before the linear response, so that it can't be mistaken for it.
 *
 * @param startHz the frequency it starts at, above 0
 * @param endHz the frequency it ends at, above {@code startHz}; a rate that can't carry it ends the
 *     sweep at 0.45 times the rate instead
 * @param seconds how long it lasts, 0.01 to 60
 */
public record ExponentialSweep(double startHz, double endHz, double seconds) implements Stimulus {
  private static final double FADE_SECONDS = 0.005;
  private static final double HIGHEST_PER_RATE = 0.45;

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException when a value is out of range
   */
  public ExponentialSweep {
    if (!(startHz > 0 && endHz > startHz && Double.isFinite(endHz))) {
      throw new IllegalArgumentException(
          "a sweep must rise from above 0 Hz, not run from " + startHz + " to " + endHz + " Hz");
    }
    if (!(seconds >= 0.01 && seconds <= 60)) {
      throw new IllegalArgumentException("a sweep must last 0.01 to 60 s, not " + seconds + " s");
    }
  }

  /** The sweep from 20 Hz to 20 kHz, the range of hearing. */
  public static ExponentialSweep fullBand(double seconds) {
    return new ExponentialSweep(20, 20_000, seconds);
  }

  /** L, the seconds in which the frequency grows e-fold. */
  public double growthSeconds() {
    return seconds / Math.log(endHz / startHz);
  }

  /** How many seconds the distortion of order {@code n} arrives before the linear response. */
  public double leadOfHarmonic(int n) {
    return growthSeconds() * Math.log(n);
  }

  /**
   * This sweep as a rate can carry it, which is what {@link #render} renders: growth and leads are
   * those of the rendered sweep only once it is fitted.
   *
   * @throws IllegalArgumentException when the sweep starts above what the rate carries
   */
  public ExponentialSweep fittedTo(SampleRate rate) {
    double highest = HIGHEST_PER_RATE * rate.hertz();
    return endHz <= highest ? this : new ExponentialSweep(startHz, highest, seconds);
  }

  @Override
  public Signal render(SampleRate rate) {
    double growth = fittedTo(rate).growthSeconds();
    double[] samples = new double[rate.samplesIn(seconds)];
    for (int i = 0; i < samples.length; i++) {
      double t = (double) i / rate.hertz();
      samples[i] = Math.sin(2 * Math.PI * startHz * growth * Math.expm1(t / growth));
    }
    Fade.ends(samples, rate.samplesIn(FADE_SECONDS));
    return Signal.of(rate, samples);
  }
}
