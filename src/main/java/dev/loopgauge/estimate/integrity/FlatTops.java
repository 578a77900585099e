package dev.loopgauge.estimate.integrity;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * The samples of a return that stand at its highest or lowest value, and whether that is clipping:
 * what the reference predicts doesn't stand there. A maximum-length sequence has flat tops of its
 * own, and so has a low tone in few bits.
 */
public final class FlatTops {
  private final double[] ret;
  private final List<Side> sides;
  private final BitSet extremes;

  private FlatTops(double[] ret, List<Side> sides, BitSet extremes) {
    this.ret = ret;
    this.sides = sides;
    this.extremes = extremes;
  }

  /** The flat tops of a return. */
  public static FlatTops of(double[] ret) {
    Range range = Range.of(ret, 0, ret.length);
    List<Side> sides = new ArrayList<>();
    for (int sign = 1; sign >= -1; sign -= 2) {
      // Most extremes are reached once: no need to look further.
      Optional<Side> side =
          range.times(sign) < Side.FEWEST ? Optional.empty() : Optional.of(Side.of(ret, sign));
      if (side.isPresent() && side.get().pilesUp()) {
        sides.add(side.get());
      }
    }
    return new FlatTops(ret, sides, range.extremes(ret));
  }

  /** Whether there are none, whatever the reference. */
  public boolean isEmpty() {
    return sides.isEmpty() && extremes.isEmpty();
  }

  /**
   * The samples that are clipped.
   *
   * @param reference the reference, sample for sample
   * @param predicted what a fitted path makes of it
   */
  public BitSet against(double[] reference, double[] predicted) {
    boolean square = !Range.of(reference, 0, reference.length).extremes(reference).isEmpty();
    BitSet clipped = square ? new BitSet() : (BitSet) extremes.clone();
    for (Side side : sides) {
      if (!side.isExplained(ret, reference, predicted)) {
        clipped.or(side.tops());
      }
    }
    return clipped;
  }

  /** The lowest and the highest of some samples, and how many have just these values. */
  private record Range(double lowest, double highest, int atLowest, int atHighest) {
    static Range of(double[] samples, int from, int to) {
      double lowest = Double.POSITIVE_INFINITY;
      double highest = Double.NEGATIVE_INFINITY;
      int atLowest = 0;
      int atHighest = 0;
      for (int i = from; i < to; i++) {
        double sample = samples[i];
        if (sample <= lowest) {
          atLowest = sample < lowest ? 1 : atLowest + 1;
          lowest = sample;
        }
        if (sample >= highest) {
          atHighest = sample > highest ? 1 : atHighest + 1;
          highest = sample;
        }
      }
      return new Range(lowest, highest, atLowest, atHighest);
    }

    int times(int sign) {
      return sign > 0 ? atHighest : atLowest;
    }

    /** The samples at the highest and the lowest value, where those are more than half of all. */
    BitSet extremes(double[] samples) {
      BitSet at = new BitSet();
      boolean most = 2 * (atHighest + atLowest) > samples.length;
      if (!most || lowest == highest) {
        return at;
      }
      for (int i = 0; i < samples.length; i++) {
        at.set(i, samples[i] == lowest || samples[i] == highest);
      }
      return at;
    }
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
      int off = 0;
      for (int i = tops.nextSetBit(0); i >= 0; i = tops.nextSetBit(i + 1)) {
        off += Math.abs(ret[i] - predicted[i]) > close ? 1 : 0;
      }
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
      Range range = Range.of(reference, from, to);
      return range.highest() - range.lowest()
          > BREAK * Math.max(Math.abs(range.highest()), Math.abs(range.lowest()));
    }
  }
}
