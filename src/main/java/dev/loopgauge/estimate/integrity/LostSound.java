package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Subtraction;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What each piece of a return holds of the fitted arrivals, and where it holds none of them
 * although they are there before and after: lost blocks ({@link GapSearch}).
 */
public final class LostSound {
  /** A gap is told to within a piece; the other uses of what is heard take windows of some. */
  private static final double PIECE_SECONDS = 0.001;

  private static final int PIECES = 5;

  private final int piece;
  private final int start;
  private final double[] found;
  private final double[] ret;
  private final double[] reference;
  private final List<Heard> pieces = new ArrayList<>();
  private final List<Heard> windows = new ArrayList<>();

  /** A search in one reading. */
  public LostSound(Reading reading) {
    this.piece = reading.rate().samplesIn(PIECE_SECONDS);
    this.start = reading.start();
    this.found = new double[piece + 2];
    this.ret = new double[piece];
    this.reference = new double[piece];
  }

  /**
   * Sound that was lost.
   *
   * @param from where it starts, in samples from the start of the capture
   * @param length for how many samples, to within a piece
   */
  public record Gap(int from, int length) {
    boolean holds(int sample) {
      return sample >= from && sample < from + length;
    }
  }

  /**
   * What one piece or window holds, as energies.
   *
   * @param from where it starts, in samples from the start of the capture
   * @param sent the reference, the arrivals' whole delay taken out
   * @param arrivals what the fitted path makes of the reference
   * @param product the product of that with the return
   * @param all the return
   * @param residual the return less the arrivals
   * @param steepness the squared slope of the arrivals
   * @param lateness the product of that slope with what is left, times -1: over the steepness this
   *     is by how much the return is later than the arrivals
   */
  public record Heard(
      int from,
      double sent,
      double arrivals,
      double product,
      double all,
      double residual,
      double steepness,
      double lateness) {
    /** Some in a row as one, at least one. */
    static Heard sum(List<Heard> some) {
      Heard sum = some.get(0);
      for (Heard next : some.subList(1, some.size())) {
        sum = sum.plus(next);
      }
      return sum;
    }

    /** This and the next as one. */
    public Heard plus(Heard next) {
      return new Heard(
          from,
          sent + next.sent,
          arrivals + next.arrivals,
          product + next.product,
          all + next.all,
          residual + next.residual,
          steepness + next.steepness,
          lateness + next.lateness);
    }
  }

  /**
   * Windows added up in stretches alike.
   *
   * @param count how many stretches; there are none where there are fewer windows
   */
  public static List<Heard> stretches(List<Heard> windows, int count) {
    int length = windows.size() / count;
    List<Heard> stretches = new ArrayList<>();
    for (int i = 0; length > 0 && i < count; i++) {
      stretches.add(Heard.sum(windows.subList(i * length, (i + 1) * length)));
    }
    return stretches;
  }

  /** All windows, in their order. */
  public List<Heard> windows() {
    return windows;
  }

  /** Looks at one block of a subtraction. */
  public void add(Subtraction source) {
    for (int from = 0; from + PIECES * piece <= source.length(); from += PIECES * piece) {
      for (int i = 0; i < PIECES; i++) {
        pieces.add(heard(source, from + i * piece));
      }
      windows.add(Heard.sum(pieces.subList(pieces.size() - PIECES, pieces.size())));
    }
  }

  private Heard heard(Subtraction source, int from) {
    double sent = 0;
    double arrivals = 0;
    double product = 0;
    double all = 0;
    double residual = 0;
    double steepness = 0;
    double lateness = 0;
    source.copyFound(from - 1, found, 0, found.length);
    source.copyReturn(from, ret, 0, piece);
    source.copyReference(from, reference, 0, piece);
    for (int i = 0; i < piece; i++) {
      double here = found[i + 1];
      double rest = ret[i] - here;
      double slope = (found[i + 2] - found[i]) / 2;
      sent += reference[i] * reference[i];
      arrivals += here * here;
      product += here * ret[i];
      all += ret[i] * ret[i];
      residual += rest * rest;
      steepness += slope * slope;
      lateness -= slope * rest;
    }
    return new Heard(
        start + source.start() + from, sent, arrivals, product, all, residual, steepness, lateness);
  }

  /** Adds what comes next in the same reading. */
  public void add(LostSound next) {
    pieces.addAll(next.pieces);
    windows.addAll(next.windows);
  }

  /**
   * The centre of the sound that tells the delay, in samples from the start of the capture: each
   * window counts by the squared slope of its arrivals, as it does for the lag at which least is
   * left (derived: least squares). Empty where no arrival was fitted.
   */
  public OptionalDouble centre() {
    double all = 0;
    double product = 0;
    for (Heard heard : windows) {
      all += heard.steepness();
      product += heard.steepness() * (heard.from() + PIECES * piece / 2.0);
    }
    return all > 0 ? OptionalDouble.of(product / all) : OptionalDouble.empty();
  }

  /** All pieces, in their order. */
  List<Heard> pieces() {
    return pieces;
  }

  /** How many samples a piece has. */
  int samples() {
    return piece;
  }
}
