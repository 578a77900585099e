package dev.loopgauge.signal;

/**
 * A single band-limited click: a sinc low-pass at 20 kHz, or at 0.42 times the rate where that is
 * lower, under a Blackman window of 129 samples, followed by silence.
 *
 * <p>The click's own centre lies {@link #CENTRE} samples after its start. A raw one-sample impulse
 * would make each converter's filter ring at the edge of its band; this one leaves it alone.
 *
 * @param seconds how long click and silence last together, 0.01 to 60
 */
public record Click(double seconds) implements Stimulus {
  /** Where the click's peak lies, in samples from its start. */
  public static final int CENTRE = 64;

  private static final double CUTOFF_HZ = 20_000;
  private static final double HIGHEST_PER_RATE = 0.42;

  /**
   * Checks the length.
   *
   * @throws IllegalArgumentException when out of range
   */
  public Click {
    if (!(seconds >= 0.01 && seconds <= 60)) {
      throw new IllegalArgumentException("a click must take 0.01 to 60 s, not " + seconds + " s");
    }
  }

  @Override
  public Signal render(SampleRate rate) {
    double cutoff = Math.min(CUTOFF_HZ / rate.hertz(), HIGHEST_PER_RATE);
    int width = 2 * CENTRE + 1;
    double[] samples = new double[Math.max(width, rate.samplesIn(seconds))];
    for (int i = 0; i < width; i++) {
      samples[i] = sinc(2 * cutoff * (i - CENTRE)) * blackman(i, width);
    }
    return Signal.of(rate, samples);
  }

  private static double sinc(double x) {
    return x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
  }

  /** The exact-zero-ended window of R. B. Blackman and J. W. Tukey, 1958. */
  private static double blackman(int i, int width) {
    double phase = 2 * Math.PI * i / (width - 1);
    return 0.42 - 0.5 * Math.cos(phase) + 0.08 * Math.cos(2 * phase);
  }
}
