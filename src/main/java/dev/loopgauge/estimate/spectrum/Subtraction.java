package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.estimate.reading.Reading;

/**
 * Walks through readings and works out what of its return the reference explains, filtered as
 * fitted. The arrays it fills are aligned to within a sample: index 0 is where the block's share of
 * the reference starts; what is found and the return belong together at each index, and the
 * reference is earlier than both by the delay's fraction.
 */
public final class Subtraction implements AutoCloseable {
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
  public Subtraction(BlockPlan plan, RealFft fft, int wholeDelay, double[] filter) {
    this.plan = plan;
    this.fft = fft;
    this.filter = filter;
    this.wholeDelay = wholeDelay;
    this.reference = fft.borrow();
    this.found = fft.borrow();
    this.ret = fft.borrow();
  }

  /** Fills the arrays for one block of a reading. */
  public void run(Reading reading, int block) {
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

  /** Gives the arrays back that it worked in. */
  @Override
  public void close() {
    fft.giveBack(reference);
    fft.giveBack(found);
    fft.giveBack(ret);
  }

  /** Which sample of the reference this block starts with. */
  public int start() {
    return start;
  }

  /** How many samples this block has. */
  public int length() {
    return length;
  }

  /** Copies some of the reference. */
  public void copyReference(int from, double[] target, int at, int count) {
    System.arraycopy(reference, plan.maxLag() + from, target, at, count);
  }

  /** Copies some of what the fitted filter makes of the reference. */
  public void copyFound(int from, double[] target, int at, int count) {
    System.arraycopy(found, plan.maxLag() + from, target, at, count);
  }

  /** Copies some of the return, moved earlier by the delay's whole samples. */
  public void copyReturn(int from, double[] target, int at, int count) {
    System.arraycopy(ret, plan.maxLag() + from, target, at, count);
  }

  /** Copies some of what is left of the return without what was found. */
  public void copyResidual(int from, double[] target, int at, int count) {
    int first = plan.maxLag() + from;
    for (int i = 0; i < count; i++) {
      target[at + i] = ret[first + i] - found[first + i];
    }
  }

  /**
   * The first of the samples from {@code from} to before {@code to} for which the return was
   * recorded and the reference tells what it should hold; {@code to} if none is.
   */
  int firstKnown(int from, int to) {
    return Math.min(Math.max(from, knownFrom), to);
  }

  /** The sample after the last of them; the first where there is none. */
  int endKnown(int from, int to) {
    return Math.max(firstKnown(from, to), Math.min(to, knownTo));
  }

  /** How many of them there are, at least one. */
  public int known(int from, int to) {
    return Math.max(1, endKnown(from, to) - firstKnown(from, to));
  }
}
