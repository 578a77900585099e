package dev.loopgauge.signal;

/**
 * A maximum-length sequence: 2^n - 1 values of +1 and -1 from a linear feedback shift register,
 * whose circular autocorrelation is 2^n - 1 at lag zero and -1 at every other lag.
 *
 * <p>Taps: shared table of primitive polynomials, each period verified by running it ({@code
 * MaximumLengthSequenceTest}). For the method see ISO 18233:2006.
 *
 * @param seconds the longest it may last, 0.01 to 60; the longest sequence that fits is taken, of
 *     order {@value #LOWEST_ORDER} to {@value #HIGHEST_ORDER}
 */
public record MaximumLengthSequence(double seconds) implements Stimulus {
  /** The lowest order, 1,023 samples. */
  public static final int LOWEST_ORDER = 10;

  /** The highest order, 262,143 samples. */
  public static final int HIGHEST_ORDER = 18;

  private static final int[][] TAPS = {
    {10, 7},
    {11, 9},
    {12, 6, 4, 1},
    {13, 4, 3, 1},
    {14, 5, 3, 1},
    {15, 14},
    {16, 15, 13, 4},
    {17, 14},
    {18, 11}
  };
  private static final double FADE_SECONDS = 0.001;

  /**
   * Checks the length.
   *
   * @throws IllegalArgumentException when out of range
   */
  public MaximumLengthSequence {
    if (!(seconds >= 0.01 && seconds <= 60)) {
      throw new IllegalArgumentException(
          "a maximum-length sequence must last 0.01 to 60 s, not " + seconds + " s");
    }
  }

  /** The highest order whose sequence fits into the time, and no lower than the lowest. */
  public int order(SampleRate rate) {
    int order = HIGHEST_ORDER;
    while (order > LOWEST_ORDER && (1 << order) - 1 > rate.samplesIn(seconds)) {
      order--;
    }
    return order;
  }

  @Override
  public Signal render(SampleRate rate) {
    double[] samples = sequence(order(rate));
    Fade.ends(samples, rate.samplesIn(FADE_SECONDS));
    return Signal.of(rate, samples);
  }

  /** One period of the sequence of the given order, unfaded, as +1 and -1. */
  static double[] sequence(int order) {
    int[] taps = TAPS[order - LOWEST_ORDER];
    double[] values = new double[(1 << order) - 1];
    int register = 1;
    for (int i = 0; i < values.length; i++) {
      int feedback = 0;
      for (int tap : taps) {
        feedback ^= register >> (order - tap);
      }
      values[i] = (register & 1) == 0 ? 1 : -1;
      register = register >> 1 | (feedback & 1) << (order - 1);
    }
    return values;
  }
}
