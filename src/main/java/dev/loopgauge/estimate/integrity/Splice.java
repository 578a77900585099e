package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Samples;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Finds where the return splices: sound before and after it came by different delays, because a
 * block was lost or repeated in between.
 *
 * <p>A splice leaves two arrivals ({@link TwoSegmentTest}): one alone before it, the other alone
 * after it. In a sweep, where each frequency comes once, a path that delays low frequencies against
 * high ones looks the same, and so does a short splice at a low frequency, which makes no second
 * arrival at all. There the instant itself must show it ({@link PhaseJump}).
 *
 * @param at where it is, in samples from the start of the capture
 * @param later by how many samples the return is later after it; empty where that can't be told
 */
public record Splice(int at, OptionalDouble later) {
  /** What was lost at it; empty where sound was put in, or where that can't be told. */
  public Optional<LostSound.Gap> lost() {
    return later.isPresent() && later.getAsDouble() <= -1
        ? Optional.of(new LostSound.Gap(at, (int) Math.rint(-later.getAsDouble())))
        : Optional.empty();
  }

  /** How many other arrivals are looked at. */
  private static final int MOST_ARRIVALS = 4;

  /** Arrivals must lie further apart than this, in samples. */
  private static final double APART = 1.5;

  /** How alike the spectra before and after are where no frequency comes once only. */
  private static final double SAME_BAND = 0.3;

  /** By how much more must be left on one side of a splice than on the other. */
  private static final double CHANGED = 4;

  /** The shortest side, in windows of about 5 ms. */
  private static final int SHORTEST = 6;

  /** Longer readings than this are not looked at, in seconds. */
  public static final double LONGEST_SECONDS = 30;

  /**
   * The splice of one reading, if there is one.
   *
   * @param arrivals the arrivals in it, the measured one first
   * @param heard what was heard of them
   */
  public static Optional<Splice> of(
      Reading reading, List<FittedArrival> arrivals, LostSound heard) {
    if (reading.reference().length() > LONGEST_SECONDS * reading.rate().hertz()) {
      return Optional.empty();
    }
    double delay = arrivals.get(0).lag();
    for (FittedArrival other : arrivals.subList(1, Math.min(arrivals.size(), 1 + MOST_ARRIVALS))) {
      if (Math.abs(other.lag() - delay) < APART) {
        continue;
      }
      Optional<Splice> there = between(reading, delay, other.lag());
      Optional<Splice> splice = there.isPresent() ? there : between(reading, other.lag(), delay);
      if (splice.isPresent()) {
        return splice;
      }
    }
    Optional<Integer> jump = PhaseJump.of(reading, heard.windows(), delay);
    return jump.isPresent()
        ? Optional.of(new Splice(reading.start() + jump.get(), later(reading, jump.get(), delay)))
        : betweenSides(reading, heard.windows(), delay);
  }

  /**
   * The splice where what is left of the return changes most, if each side has its own delay: in a
   * sweep alone. Where both sides have the same frequencies, music that changes would look like it,
   * and one filter can be asked whether it explains both.
   */
  private static Optional<Splice> betweenSides(
      Reading reading, List<LostSound.Heard> windows, double delay) {
    OptionalInt change = change(windows);
    if (change.isEmpty()) {
      return Optional.empty();
    }
    int at = windows.get(change.getAsInt()).from() - reading.start();
    if (sameBand(reading.reference(), at)) {
      return Optional.empty();
    }
    double before = side(reading, 0, at, delay);
    double after = side(reading, at, reading.reference().length(), delay);
    if (Math.abs(before - after) < APART) {
      return Optional.empty();
    }
    return between(reading, before, after);
  }

  /** Where a change of the variance of what is left is likeliest, if it is a large one. */
  private static OptionalInt change(List<LostSound.Heard> windows) {
    int count = windows.size();
    double[] sums = new double[count + 1];
    for (int i = 0; i < count; i++) {
      sums[i + 1] = sums[i] + windows.get(i).residual() + Double.MIN_NORMAL;
    }
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = SHORTEST; i + SHORTEST <= count; i++) {
      double before = sums[i] / i;
      double after = (sums[count] - sums[i]) / (count - i);
      double cost = i * Math.log(before) + (count - i) * Math.log(after);
      if (cost < least && Math.max(before, after) > CHANGED * Math.min(before, after)) {
        least = cost;
        best = i;
      }
    }
    return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
  }

  private static Optional<Splice> between(Reading reading, double before, double after) {
    return TwoSegmentTest.split(reading, (int) Math.rint(before), (int) Math.rint(after))
        .filter(at -> isWithin(reading.reference(), (int) (at - before)))
        .filter(
            at ->
                sameBand(reading.reference(), (int) (at - before))
                    || PhaseJump.near(reading, at, before, after).isPresent())
        .map(at -> new Splice(reading.start() + at, OptionalDouble.of(after - before)));
  }

  private static boolean isWithin(Samples reference, int at) {
    return at > 0 && at < reference.length();
  }

  /** Whether one filter can be asked whether it explains both sides of a sample of a reference. */
  public static boolean asksFor(Reading reading, int at) {
    boolean isShort = reading.reference().length() <= LONGEST_SECONDS * reading.rate().hertz();
    return isShort && sameBand(reading.reference(), at);
  }

  /** Whether what a reference holds before and after a sample of it is of the same frequencies. */
  public static boolean sameBand(Samples reference, int at) {
    int length = reference.length();
    RealFft fft = new RealFft(RealFft.lengthFor(length));
    double[] before = new double[fft.length()];
    double[] after = new double[fft.length()];
    reference.copyTo(0, before, 0, at);
    reference.copyTo(at, after, at, length - at);
    fft.forward(before);
    fft.forward(after);
    double product = 0;
    double one = 0;
    double other = 0;
    for (int k = 1; k < fft.length() / 2; k++) {
      one += Packed.power(before, k);
      other += Packed.power(after, k);
      product += Math.sqrt(Packed.power(before, k) * Packed.power(after, k));
    }
    return product > SAME_BAND * Math.sqrt(one * other);
  }

  /** By how much the return after a sample of it is later than before. */
  private static OptionalDouble later(Reading reading, int at, double delay) {
    int cut = at - (int) Math.rint(delay);
    int length = reading.reference().length();
    if (!isWithin(reading.reference(), cut)) {
      return OptionalDouble.empty();
    }
    double apart = side(reading, cut, length, delay) - side(reading, 0, cut, delay);
    return Math.abs(apart) > APART ? OptionalDouble.of(apart) : OptionalDouble.empty();
  }

  /** The delay of one side by itself. */
  private static double side(Reading whole, int from, int to, double delay) {
    int near = (int) Math.rint(delay);
    Spectra alone = Spectra.of(List.of(whole.alone(from, to, near)), PhaseJump.FURTHEST_SECONDS);
    return near + alone.strongest().lag();
  }
}
