package dev.loopgauge.estimate.integrity;

import java.util.Arrays;
import java.util.BitSet;
import java.util.DoubleSummaryStatistics;
import java.util.List;

/**
 * The samples of a return that stand at its highest or lowest value, and whether that is clipping:
 * what the reference predicts doesn't stand there. A maximum-length sequence has flat tops of its
 * own, and so has a low tone in few bits.
 */
public final class FlatTops {
  private final double[] ret;
  private final List<Side> sides;

  private FlatTops(double[] ret, List<Side> sides) {
    this.ret = ret;
    this.sides = sides;
  }

  /** The flat tops of a return. */
  public static FlatTops of(double[] ret) {
    List<Side> sides = List.of(Side.of(ret, 1), Side.of(ret, -1));
    return new FlatTops(ret, sides.stream().filter(Side::pilesUp).toList());
  }

  /** Whether there are none, whatever the reference. */
  public boolean isEmpty() {
    return sides.isEmpty() && atExtremes(ret).isEmpty();
  }

  /**
   * The samples that are clipped.
   *
   * @param reference the reference, sample for sample
   * @param predicted what a fitted path makes of it
   */
  public BitSet against(double[] reference, double[] predicted) {
    BitSet clipped = atExtremes(reference).isEmpty() ? atExtremes(ret) : new BitSet();
    for (Side side : sides) {
      if (!side.isExplained(ret, reference, predicted)) {
        clipped.or(side.tops());
      }
    }
    return clipped;
  }

  /** The samples at the highest and the lowest value, where those are more than half of all. */
  private static BitSet atExtremes(double[] samples) {
    DoubleSummaryStatistics range = Arrays.stream(samples).summaryStatistics();
    BitSet at = new BitSet();
    if (range.getMin() == range.getMax()) {
      return at;
    }
    for (int i = 0; i < samples.length; i++) {
      at.set(i, samples[i] == range.getMin() || samples[i] == range.getMax());
    }
    return 2 * at.cardinality() > samples.length ? at : new BitSet();
  }

  /**
   * The samples at the extreme on one side.
   *
   * @param level how far they are from 0
   * @param tops which they are, without crests that fall away slowly
   * @param step how far below the nearest other value lies
   * @param beside how many samples have that value exactly
   */
  private record Side(double level, BitSet tops, double step, int beside) {
    /** A flat top breaks off by more than this share of the peak; a low tone's crest doesn't. */
    private static final double BREAK = 2e-4;

    /** One sample is always the highest. */
    private static final int FEWEST = 2;

    /** Two equal samples are the top of a click between them, three are none. */
    private static final int LONG = 3;

    /** A residual this many times its root mean square elsewhere is none by chance. */
    private static final double BEYOND_NOISE = 8;

    /** The least share of the tops that are not where they are predicted. */
    private static final double UNEXPLAINED = 0.1;

    static Side of(double[] ret, int sign) {
      double level = highest(ret, sign, Double.POSITIVE_INFINITY);
      double below = highest(ret, sign, level);
      BitSet tops = new BitSet();
      int beside = 0;
      for (int i = 0; level > 0 && i < ret.length; i++) {
        double value = sign * ret[i];
        tops.set(i, value == level);
        beside += value == below ? 1 : 0;
      }
      Side all = new Side(level, tops, level - below, beside);
      all.dropCrests(ret);
      return all;
    }

    private static double highest(double[] ret, int sign, double under) {
      double highest = Double.NEGATIVE_INFINITY;
      for (double sample : ret) {
        highest = sign * sample < under ? Math.max(highest, sign * sample) : highest;
      }
      return highest;
    }

    private void dropCrests(double[] ret) {
      for (int from = tops.nextSetBit(0); from >= 0; from = tops.nextSetBit(from)) {
        int to = tops.nextClearBit(from);
        boolean before = from == 0 || Math.abs(ret[from] - ret[from - 1]) > BREAK * level;
        boolean after = to == ret.length || Math.abs(ret[to - 1] - ret[to]) > BREAK * level;
        if (!before || !after) {
          tops.clear(from, to);
        }
        from = to;
      }
    }

    /**
     * Clipping heaps up what would lie above, beside values that come near it; else the extreme is
     * rarer than what is beside it, or the return has few values altogether.
     */
    boolean pilesUp() {
      return tops.cardinality() >= FEWEST && tops.cardinality() > 2 * beside && step < level;
    }

    /**
     * Whether most of them are predicted, to within half a step and noise. A fitted path makes
     * anything of a click, so that a longer top is explained only by a reference that is flat too.
     */
    boolean isExplained(double[] ret, double[] reference, double[] predicted) {
      double noise = BEYOND_NOISE * residual(ret, predicted);
      double close = Math.min(step / 2, Math.max(BREAK * level, noise));
      long off = tops.stream().filter(i -> Math.abs(ret[i] - predicted[i]) > close).count();
      return off + moving(reference) < UNEXPLAINED * tops.cardinality();
    }

    /** The root mean square of what the prediction leaves of all other samples. */
    private double residual(double[] ret, double[] predicted) {
      double sum = 0;
      for (int i = tops.nextClearBit(0); i < ret.length; i = tops.nextClearBit(i + 1)) {
        sum += (ret[i] - predicted[i]) * (ret[i] - predicted[i]);
      }
      return Math.sqrt(sum / Math.max(1, ret.length - tops.cardinality()));
    }

    /** How many samples lie in tops through which the reference moves. */
    private int moving(double[] reference) {
      int moving = 0;
      for (int from = tops.nextSetBit(0); from >= 0; from = tops.nextSetBit(from)) {
        int to = tops.nextClearBit(from);
        moving += to - from >= LONG && moves(reference, from, to) ? to - from : 0;
        from = to;
      }
      return moving;
    }

    private static boolean moves(double[] reference, int from, int to) {
      DoubleSummaryStatistics values = Arrays.stream(reference, from, to).summaryStatistics();
      return values.getMax() - values.getMin()
          > BREAK * Math.max(Math.abs(values.getMax()), Math.abs(values.getMin()));
    }
  }
}
