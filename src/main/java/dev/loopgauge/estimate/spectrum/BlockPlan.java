package dev.loopgauge.estimate.spectrum;

/**
 * How a long correlation is cut into transforms: each takes {@code advance} samples of the
 * reference and all samples of the return that lie within {@code maxLag} of them. Summed over the
 * blocks this is the exact linear correlation for lags from -maxLag to +maxLag, in memory and, for
 * each lag that is looked at, in time that don't grow with the recording.
 *
 * @param transform the length of each transform, a power of two
 * @param advance how many reference samples each block takes
 * @param maxLag the largest lag either way, in samples
 */
public record BlockPlan(int transform, int advance, int maxLag) {
  /** Below this a transform fits the processor's own memory, and is no quicker when shorter. */
  private static final int SHORTEST_OF_MANY = 1 << 16;

  private static final int SHORTEST = 1 << 12;

  /**
   * The plan for references of up to {@code referenceLength} samples.
   *
   * @param maxLag the largest lag either way, at least {@code step}
   * @param step what {@code advance} is a multiple of where there are several blocks
   */
  public static BlockPlan of(int referenceLength, int maxLag, int step) {
    long whole = Math.max((long) referenceLength + 2L * maxLag, SHORTEST);
    int several = Math.max(RealFft.lengthFor(4 * maxLag), SHORTEST_OF_MANY);
    if (whole <= several) {
      return new BlockPlan(RealFft.lengthFor((int) whole), referenceLength, maxLag);
    }
    int room = several - 2 * maxLag;
    return new BlockPlan(several, room - room % step, maxLag);
  }

  /** How many blocks cover a reference of {@code length} samples. */
  int blocks(int length) {
    return (length + advance - 1) / advance;
  }
}
