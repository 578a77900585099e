package dev.loopgauge.estimate.integrity;

/**
 * The sums over a stretch that a parabola is fitted from: products of a sound, its quadrature and a
 * return, times powers of time. They are kept for short blocks, each with its own start as time 0,
 * and moved to another (the binomial theorem), so that a long stretch costs as much as its blocks.
 */
final class SweepMoments {
  /** How many samples a block has. */
  private static final int BLOCK = 8;

  /**
   * The sums in their order: of two sounds to the fourth power of time, with a return the second.
   */
  static final int SENT = 0;

  static final int BOTH = 5;
  static final int QUADRATURE = 10;
  static final int SENT_RETURN = 15;
  static final int QUADRATURE_RETURN = 18;
  static final int RETURN = 21;
  private static final int COUNT = 22;

  private final double[] sent;
  private final double[] quadrature;
  private final double[] ret;
  private final double side;
  private final double[] blocks;

  /**
   * Of signals of one length.
   *
   * @param side the unit of time, in samples
   */
  SweepMoments(double[] sent, double[] quadrature, double[] ret, double side) {
    this.sent = sent;
    this.quadrature = quadrature;
    this.ret = ret;
    this.side = side;
    this.blocks = new double[ret.length / BLOCK * COUNT];
    for (int i = 0; i < ret.length / BLOCK; i++) {
      for (int k = 0; k < BLOCK; k++) {
        add(i * BLOCK + k, k / side, blocks, i * COUNT);
      }
    }
  }

  /** The sums from one sample on and before another, time counted from an instant. */
  double[] over(int from, int to, int at) {
    double[] sums = new double[COUNT];
    int firstBlock = (from + BLOCK - 1) / BLOCK;
    int endBlock = Math.max(firstBlock, to / BLOCK);
    for (int i = from; i < Math.min(to, firstBlock * BLOCK); i++) {
      add(i, (i - at) / side, sums, 0);
    }
    for (int block = firstBlock; block < endBlock; block++) {
      addBlock(block * COUNT, (block * BLOCK - at) / side, sums);
    }
    for (int i = Math.max(from, endBlock * BLOCK); i < to; i++) {
      add(i, (i - at) / side, sums, 0);
    }
    return sums;
  }

  private void add(int i, double time, double[] sums, int offset) {
    double x = sent[i];
    double q = quadrature[i];
    double y = ret[i];
    double power = 1;
    for (int k = 0; k < BOTH; k++) {
      sums[offset + SENT + k] += power * x * x;
      sums[offset + BOTH + k] += power * x * q;
      sums[offset + QUADRATURE + k] += power * q * q;
      if (k < QUADRATURE_RETURN - SENT_RETURN) {
        sums[offset + SENT_RETURN + k] += power * x * y;
        sums[offset + QUADRATURE_RETURN + k] += power * q * y;
      }
      power *= time;
    }
    sums[offset + RETURN] += y * y;
  }

  private void addBlock(int block, double later, double[] sums) {
    moveFive(block + SENT, later, sums, SENT);
    moveFive(block + BOTH, later, sums, BOTH);
    moveFive(block + QUADRATURE, later, sums, QUADRATURE);
    moveThree(block + SENT_RETURN, later, sums, SENT_RETURN);
    moveThree(block + QUADRATURE_RETURN, later, sums, QUADRATURE_RETURN);
    sums[RETURN] += blocks[block + RETURN];
  }

  private void moveThree(int block, double d, double[] sums, int at) {
    double m0 = blocks[block];
    double m1 = blocks[block + 1];
    sums[at] += m0;
    sums[at + 1] += m1 + d * m0;
    sums[at + 2] += blocks[block + 2] + d * (2 * m1 + d * m0);
  }

  private void moveFive(int block, double d, double[] sums, int at) {
    moveThree(block, d, sums, at);
    double m0 = blocks[block];
    double m1 = blocks[block + 1];
    double m2 = blocks[block + 2];
    double m3 = blocks[block + 3];
    sums[at + 3] += m3 + d * (3 * m2 + d * (3 * m1 + d * m0));
    sums[at + 4] += blocks[block + 4] + d * (4 * m3 + d * (6 * m2 + d * (4 * m1 + d * m0)));
  }
}
