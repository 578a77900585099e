package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import java.util.ArrayList;
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

  private final ComplexGain before;
  private final ComplexGain after;
  private final int middle;

  private PhaseJump(ComplexGain before, ComplexGain after, int middle) {
    this.before = before;
    this.after = after;
    this.middle = middle;
  }

  /**
   * The jump in a reading, as a sample of its return.
   *
   * @param windows what each window of it held
   * @param delay the return's delay
   */
  static Optional<Integer> of(Reading reading, List<LostSound.Heard> windows, double delay) {
    double least = STANDS_OUT * LostSound.medianResidual(windows);
    List<LostSound.Heard> most = new ArrayList<>();
    for (LostSound.Heard window : windows) {
      if (window.residual() > least) {
        most.add(window);
      }
    }
    int whole = (int) Math.rint(delay);
    for (int i = 0; i < TRIED && !most.isEmpty(); i++) {
      int sample = most.remove(fullest(most)).from() - reading.start() + whole;
      Optional<Integer> jump = near(reading, sample, delay, delay);
      if (jump.isPresent()) {
        return jump;
      }
    }
    return Optional.empty();
  }

  /** The first of the windows in which most is left. */
  private static int fullest(List<LostSound.Heard> windows) {
    int fullest = 0;
    for (int i = 1; i < windows.size(); i++) {
      fullest = windows.get(i).residual() > windows.get(fullest).residual() ? i : fullest;
    }
    return fullest;
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
    Optional<Integer> instant =
        new PhaseJump(
                gain(reading, first - (int) Math.rint(before), fft, ret),
                gain(reading, first - (int) Math.rint(after), fft, ret),
                ret.length / 2)
            .instant(side);
    return instant.isPresent() ? Optional.of(first + instant.get()) : Optional.empty();
  }

  /** The reference around an instant as it belongs to one side of it, against the return. */
  private static ComplexGain gain(Reading reading, int first, RealFft fft, double[] ret) {
    double[] reference = new double[fft.length()];
    reading.reference().copyTo(first, reference, 0, reference.length);
    double[] quadrature = reference.clone();
    fft.forward(quadrature);
    Packed.hilbertTransform(quadrature);
    fft.inverse(quadrature);
    return new ComplexGain(reference, quadrature, ret);
  }

  private Optional<Integer> instant(int side) {
    int best = middle;
    double least = Double.POSITIVE_INFINITY;
    for (int at = middle - side; at <= middle + side; at += STEP) {
      ComplexGain.Fitted one = before.over(at - side, at);
      ComplexGain.Fitted other = after.over(at, at + side);
      if (Math.min(one.played(), other.played()) * SAME_PLAYED
          < Math.max(one.played(), other.played())) {
        continue;
      }
      double residual = one.residual() + other.residual();
      double whole =
          Math.min(
              before.over(at - side, at + side).residual(),
              after.over(at - side, at + side).residual());
      if (residual < least * whole && whole > LEFT_BY_ONE * (one.heard() + other.heard())) {
        least = residual / whole;
        best = at;
      }
    }
    double one = before.over(best - side, best).level();
    double other = after.over(best, best + side).level();
    boolean alike = Math.max(one, other) < SAME_LEVEL * Math.min(one, other);
    return least < EXPLAINED && alike ? Optional.of(best) : Optional.empty();
  }
}
