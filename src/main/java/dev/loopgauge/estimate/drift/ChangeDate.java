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
   * The moment.
   *
   * @param from the first sample to look at
   * @param to the sample behind the last
   * @param before the delay before, in samples
   * @param after the delay after, in samples
   * @return the sample of the return at which it changed, to within some milliseconds
   */
  public int between(int from, int to, double before, double after) {
    double sum = 0;
    double most = Double.NEGATIVE_INFINITY;
    int best = from;
    double sign = sign(from, to, before, after);
    for (int at = from; at < to; at += piece) {
      if (sum > most) {
        most = sum;
        best = at;
      }
      int length = Math.min(piece, to - at);
      sum += sign * (product(at, length, before) - product(at, length, after));
    }
    return sum > most ? to : best;
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
