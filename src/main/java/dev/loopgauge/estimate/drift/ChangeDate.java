package dev.loopgauge.estimate.drift;

import dev.loopgauge.signal.Samples;

/**
 * When a delay changed from one value to another: of all moments the one before which the return is
 * most like the reference at the first delay, and after which it is most like it at the second. The
 * products of return and reference are summed up piece by piece; where the sum of their differences
 * is largest, the delay changed (the most likely change point of a known shift in white noise; E.
 * S. Page, "Continuous inspection schemes", Biometrika 41, 1954, from memory).
 */
public final class ChangeDate {
  private static final double PIECE_SECONDS = 0.005;

  /** A piece tells which delay it has where it says a tenth of what the loudest says. */
  private static final double TELLING = 0.1;

  private final Samples reference;
  private final Samples ret;
  private final int piece;

  /** For a reference and its return; both started at the same instant. */
  public ChangeDate(Samples reference, Samples ret) {
    this.reference = reference;
    this.ret = ret;
    this.piece = reference.rate().samplesIn(PIECE_SECONDS);
  }

  /**
   * A moment.
   *
   * @param at the sample of the return at which the delay changed
   * @param within how many samples off that may be: as far as the nearest pieces on either side
   *     that are loud enough to tell
   */
  public record Found(int at, int within) {}

  /**
   * The moment.
   *
   * @param from the first sample to look at
   * @param to the sample behind the last
   * @param before the delay before, in samples
   * @param after the delay after, in samples
   */
  public Found between(int from, int to, double before, double after) {
    double sign = sign(from, to, before, after);
    double[] gains = new double[Math.max(1, (to - from) / piece)];
    for (int i = 0; i < gains.length; i++) {
      int at = from + i * piece;
      gains[i] = sign * (product(at, piece, before) - product(at, piece, after));
    }
    int best = best(gains);
    double loudest = 0;
    for (double gain : gains) {
      loudest = Math.max(loudest, Math.abs(gain));
    }
    int first = best;
    while (first > 0 && gains[first - 1] < TELLING * loudest) {
      first--;
    }
    int last = best;
    while (last < gains.length && gains[last] > -TELLING * loudest) {
      last++;
    }
    return new Found(from + best * piece, (1 + Math.max(best - first, last - best)) * piece);
  }

  /** The piece before which the sum is largest. */
  private static int best(double[] gains) {
    double sum = 0;
    double most = 0;
    int best = 0;
    for (int i = 0; i < gains.length; i++) {
      sum += gains[i];
      if (sum > most) {
        most = sum;
        best = i + 1;
      }
    }
    return best;
  }

  /** Whether the path turns the sound upside down, as -1 or 1. */
  private double sign(int from, int to, double before, double after) {
    double one = product(from, to - from, before);
    double other = product(from, to - from, after);
    return Math.abs(one) > Math.abs(other) ? Math.signum(one) : Math.signum(other);
  }

  /** Return times reference at a delay, straight lines between whole samples. */
  private double product(int at, int length, double delay) {
    int whole = (int) Math.floor(delay);
    double part = delay - whole;
    double[] heard = new double[length];
    double[] sent = new double[length + 1];
    ret.copyTo(at, heard, 0, length);
    reference.copyTo(at - whole - 1, sent, 0, length + 1);
    double sum = 0;
    for (int i = 0; i < length; i++) {
      sum += heard[i] * ((1 - part) * sent[i + 1] + part * sent[i]);
    }
    return sum;
  }
}
