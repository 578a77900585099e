package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.signal.Samples;

/**
 * When a delay changed from one value to another: of all moments the one at which an arrival of the
 * reference that is at the first delay before and at the second after, at one level, leaves least
 * of the return (the most likely change point in white noise, the level unknown; E. S. Page,
 * "Continuous inspection schemes", Biometrika 41, 1954, from memory). It is looked for piece by
 * piece.
 */
public final class ChangeDate {
  private static final double PIECE_SECONDS = 0.005;

  /** What stays below a tenth of what the loudest piece says tells nothing. */
  private static final double TELLING = 0.1;

  /**
   * Where sound misled by so much elsewhere, it may by twice that. Of 5,600 steps of 1 to 192
   * samples in speech, music and applause on eight kinds of path one lay outside what this allows,
   * of 1,600 five without it (counted once, not kept as a test).
   */
  private static final double MISLEADS = 2;

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
    double[] explained = explained(from, Math.max(1, (to - from) / piece), before, after);
    int best = PeakSearch.strongest(explained);
    double least = explained[best] - doubt(explained, best);
    int first = best;
    while (first > 0 && explained[first - 1] > least) {
      first--;
    }
    int last = best;
    while (last + 1 < explained.length && explained[last + 1] > least) {
      last++;
    }
    return new Found(from + best * piece, (1 + Math.max(best - first, last - best)) * piece);
  }

  /** The energy that is explained if the delay changed before each piece, or behind the last. */
  private double[] explained(int from, int count, double before, double after) {
    Copy all = Copy.NONE;
    for (int i = 0; i < count; i++) {
      all = all.plus(arrival(from + i * piece, after));
    }
    double[] explained = new double[count + 1];
    explained[0] = all.explained();
    for (int i = 0; i < count; i++) {
      int at = from + i * piece;
      all = all.plus(arrival(at, before)).less(arrival(at, after));
      explained[i + 1] = all.explained();
    }
    return explained;
  }

  /** How much less another moment may explain and still be the one. */
  private static double doubt(double[] explained, int best) {
    double loudest = 0;
    for (int i = 1; i < explained.length; i++) {
      loudest = Math.max(loudest, Math.abs(explained[i] - explained[i - 1]));
    }
    double misled =
        Math.max(misled(explained, 0, best), misled(explained, explained.length - 1, best));
    return Math.max(TELLING * loudest, MISLEADS * misled);
  }

  /** By how much what is explained falls at most on its way up to the best moment. */
  private static double misled(double[] explained, int from, int best) {
    double most = explained[from];
    double misled = 0;
    for (int i = from; i != best; i += Integer.signum(best - from)) {
      most = Math.max(most, explained[i]);
      misled = Math.max(misled, most - explained[i]);
    }
    return misled;
  }

  /**
   * An arrival of the reference.
   *
   * @param product the sum of its products with the return
   * @param energy the sum of its squares
   */
  private record Copy(double product, double energy) {
    static final Copy NONE = new Copy(0, 0);

    Copy plus(Copy other) {
      return new Copy(product + other.product, energy + other.energy);
    }

    Copy less(Copy other) {
      return new Copy(product - other.product, energy - other.energy);
    }

    /** The energy of the return that it explains at the level that fits best. */
    double explained() {
      return energy > 0 ? product * product / energy : 0;
    }
  }

  /** A piece of the reference at a delay, straight lines between whole samples. */
  private Copy arrival(int at, double delay) {
    int whole = (int) Math.floor(delay);
    double part = delay - whole;
    double[] heard = new double[piece];
    double[] sent = new double[piece + 1];
    ret.copyTo(at, heard, 0, piece);
    reference.copyTo(at - whole - 1, sent, 0, piece + 1);
    double product = 0;
    double energy = 0;
    for (int i = 0; i < piece; i++) {
      double here = (1 - part) * sent[i + 1] + part * sent[i];
      product += heard[i] * here;
      energy += here * here;
    }
    return new Copy(product, energy);
  }
}
