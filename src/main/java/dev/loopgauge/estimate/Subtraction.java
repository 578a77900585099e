package dev.loopgauge.estimate;

/**
 * Walks through readings and works out what of its return the reference explains, filtered as
 * fitted. The arrays it fills are aligned to within a sample: index 0 is where the block's share of
 * the reference starts; what is found and the return belong together at each index, and the
 * reference is earlier than both by the delay's fraction.
 */
final class Subtraction {
  private final BlockPlan plan;
  private final RealFft fft;
  private final double[] filter;
  private final int wholeDelay;
  private final double[] reference;
  private final double[] found;
  private final double[] ret;
  private int start;
  private int length;
  private int knownFrom;
  private int knownTo;

  /**
   * A walk through readings.
   *
   * @param fft a transform of the plan's length
   * @param wholeDelay by how many samples the return is moved earlier
   * @param filter what the path does beside, as a spectrum by that transform
   */
  Subtraction(BlockPlan plan, RealFft fft, int wholeDelay, double[] filter) {
    this.plan = plan;
    this.fft = fft;
    this.filter = filter;
    this.wholeDelay = wholeDelay;
    this.reference = new double[plan.transform()];
    this.found = new double[plan.transform()];
    this.ret = new double[plan.transform()];
  }

  /** Fills the arrays for one block of a reading. */
  void run(Reading reading, int block) {
    start = block * plan.advance();
    length = Math.min(plan.advance(), reading.reference().length() - start);
    knownFrom = reading.recordedFrom() - start - wholeDelay;
    knownTo = reading.recordedTo() - start - wholeDelay;
    if (reading.goesOn()) {
      knownTo = Math.min(knownTo, reading.reference().length() - start);
    }
    reading.reference().copyTo(start - plan.maxLag(), reference, 0, plan.transform());
    reading.ret().copyTo(start - plan.maxLag() + wholeDelay, ret, 0, plan.transform());
    System.arraycopy(reference, 0, found, 0, found.length);
    fft.forward(found);
    Packed.multiply(found, filter);
    fft.inverse(found);
  }

  /** Which sample of the reference this block starts with. */
  int start() {
    return start;
  }

  /** How many samples this block has. */
  int length() {
    return length;
  }

  /** The reference. */
  double reference(int i) {
    return reference[plan.maxLag() + i];
  }

  /** What the fitted filter makes of the reference. */
  double found(int i) {
    return found[plan.maxLag() + i];
  }

  /** The return, moved earlier by the delay's whole samples. */
  double ret(int i) {
    return ret[plan.maxLag() + i];
  }

  /** Whether the return was recorded there, and the reference tells what it should hold. */
  boolean isKnown(int i) {
    return i >= knownFrom && i < knownTo;
  }

  /** How many of the samples from {@code from} to {@code to} are known, at least one. */
  int known(int from, int to) {
    return Math.max(1, Math.min(to, knownTo) - Math.max(from, knownFrom));
  }
}
