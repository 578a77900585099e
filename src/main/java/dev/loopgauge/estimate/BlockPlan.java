package dev.loopgauge.estimate;

/**
 * How a long correlation is cut into transforms: each takes {@code advance} samples of the
 * reference and all samples of the return that lie within {@code maxLag} of them. Summed over the
 * blocks this is the exact linear correlation for lags from -maxLag to +maxLag, in memory that
 * doesn't grow with the recording.
 *
 * @param transform the length of each transform, a power of two
 * @param advance how many reference samples each block takes
 * @param maxLag the largest lag either way, in samples
 */
record BlockPlan(int transform, int advance, int maxLag) {
  private static final int LONGEST_SINGLE = 1 << 20;
  private static final int SHORTEST = 1 << 12;

  /** The plan for references of up to {@code referenceLength} samples. */
  static BlockPlan of(int referenceLength, int maxLag) {
    long whole = (long) referenceLength + 2L * maxLag;
    int transform =
        whole <= LONGEST_SINGLE
            ? RealFft.lengthFor(Math.max((int) whole, SHORTEST))
            : RealFft.lengthFor(Math.max(4 * maxLag, LONGEST_SINGLE / 2));
    return new BlockPlan(transform, Math.min(referenceLength, transform - 2 * maxLag), maxLag);
  }

  /** How many blocks cover a reference of {@code length} samples. */
  int blocks(int length) {
    return (length + advance - 1) / advance;
  }
}
