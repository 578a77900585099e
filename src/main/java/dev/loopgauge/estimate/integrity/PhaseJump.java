package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds the instant at which a sweep's phase jumps in the return. For some milliseconds a sweep is
 * one frequency, and any smooth path is one complex gain on it: a sum of the reference and its
 * Hilbert transform. Where one such gain fits badly, but one before and another after an instant
 * fit well, the sound was cut and joined.
 *
 * <p>It is looked for where most is left of the return. What a cough or a crackle leaves there no
 * two gains explain; a filter's edge makes the gain change smoothly, and not at an instant.
 */
final class PhaseJump {
  /** How far what is left in a window must stand above the middle of all. */
  private static final double STANDS_OUT = 20;

  /**
   * The least share of the return that one gain leaves. A phase that jumps by 0.2 radians leaves
   * sin^2(0.1); rounding and a card's own noise leave far less.
   */
  private static final double LEFT_BY_ONE = 0.01;

  /** The most that two gains may leave of what one leaves. */
  private static final double EXPLAINED = 0.1;

  /** The gains before and after are alike in level to within this factor. */
  private static final double SAME_LEVEL = 1.5;

  /** Both sides play alike loud to within this factor of energy: a start or end is no jump. */
  private static final double SAME_PLAYED = 2;

  private static final int TRIED = 6;
  private static final double SIDE_SECONDS = 0.04;
  private static final int STEP = 8;

  /** How far from the delay the sound on one side of a jump is looked for, in seconds. */
  static final double FURTHEST_SECONDS = 0.1;

  private final Side before;
  private final Side after;
  private final double[] ret;

  private PhaseJump(Side before, Side after, double[] ret) {
    this.before = before;
    this.after = after;
    this.ret = ret;
  }

  /** The reference around an instant as it belongs to one side of it, and its Hilbert transform. */
  @SuppressWarnings("ArrayRecordComponent") // made and used up within one search, never compared
  private record Side(double[] reference, double[] quadrature) {}

  /**
   * The jump in a reading, as a sample of its return.
   *
   * @param windows what each window of it held
   * @param delay the return's delay
   */
  static Optional<Integer> of(Reading reading, List<LostSound.Heard> windows, double delay) {
    double least = STANDS_OUT * LostSound.median(windows, LostSound.Heard::left);
    List<LostSound.Heard> most = new ArrayList<>();
    for (LostSound.Heard window : windows) {
      if (window.left() > least) {
        most.add(window);
      }
    }
    most.sort(Comparator.comparingDouble(LostSound.Heard::left).reversed());
    int whole = (int) Math.rint(delay);
    return most.stream()
        .limit(TRIED)
        .map(window -> near(reading, window.from() - reading.start() + whole, delay, delay))
        .flatMap(Optional::stream)
        .findFirst();
  }

  /**
   * The jump near a sample of the return.
   *
   * @param before the delay of the sound before it
   * @param after the delay of the sound after it
   */
  static Optional<Integer> near(Reading reading, int sample, double before, double after) {
    int side = reading.rate().samplesIn(SIDE_SECONDS);
    RealFft fft = new RealFft(RealFft.lengthFor(8 * side));
    int first = sample - fft.length() / 2;
    double[] ret = new double[fft.length()];
    reading.ret().copyTo(first, ret, 0, ret.length);
    return new PhaseJump(
            side(reading, first - (int) Math.rint(before), fft),
            side(reading, first - (int) Math.rint(after), fft),
            ret)
        .instant(side)
        .map(at -> first + at);
  }

  private static Side side(Reading reading, int first, RealFft fft) {
    double[] reference = new double[fft.length()];
    reading.reference().copyTo(first, reference, 0, reference.length);
    double[] quadrature = reference.clone();
    fft.forward(quadrature);
    Packed.hilbertTransform(quadrature);
    fft.inverse(quadrature);
    return new Side(reference, quadrature);
  }

  private Optional<Integer> instant(int side) {
    int middle = ret.length / 2;
    int best = middle;
    double least = Double.POSITIVE_INFINITY;
    for (int at = middle - side; at <= middle + side; at += STEP) {
      Gain one = gain(before, at - side, at);
      Gain other = gain(after, at, at + side);
      if (Math.min(one.played, other.played) * SAME_PLAYED < Math.max(one.played, other.played)) {
        continue;
      }
      double left = one.left + other.left;
      double whole =
          Math.min(gain(before, at - side, at + side).left, gain(after, at - side, at + side).left);
      if (left < least * whole && whole > LEFT_BY_ONE * (one.heard + other.heard)) {
        least = left / whole;
        best = at;
      }
    }
    double one = gain(before, best - side, best).level;
    double other = gain(after, best, best + side).level;
    boolean alike = Math.max(one, other) < SAME_LEVEL * Math.min(one, other);
    return least < EXPLAINED && alike ? Optional.of(best) : Optional.empty();
  }

  /**
   * The reference's and the return's energy over a stretch, the complex gain's magnitude, and the
   * energy that it leaves.
   */
  private record Gain(double played, double heard, double level, double left) {}

  /** Least squares with two unknowns. */
  private Gain gain(Side side, int from, int to) {
    double[] reference = side.reference;
    double[] quadrature = side.quadrature;
    double xx = 0;
    double xq = 0;
    double qq = 0;
    double xy = 0;
    double qy = 0;
    double yy = 0;
    for (int i = from; i < to; i++) {
      xx += reference[i] * reference[i];
      xq += reference[i] * quadrature[i];
      qq += quadrature[i] * quadrature[i];
      xy += reference[i] * ret[i];
      qy += quadrature[i] * ret[i];
      yy += ret[i] * ret[i];
    }
    double determinant = xx * qq - xq * xq;
    if (!(determinant > 0)) {
      return new Gain(xx, yy, 0, yy);
    }
    double a = (xy * qq - qy * xq) / determinant;
    double b = (qy * xx - xy * xq) / determinant;
    return new Gain(xx, yy, Math.hypot(a, b), Math.max(0, yy - a * xy - b * qy));
  }
}
