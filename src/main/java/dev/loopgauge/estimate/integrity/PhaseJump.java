package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.stats.Odds;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The instant at which the phase of a sweep's return jumps, because sound was cut and joined there.
 *
 * <p>For some milliseconds a sweep is one frequency, and any smooth filter one complex gain on it,
 * which changes along a curve ({@link GainCurve}). So the curve fitted to the return before an
 * instant and that fitted after it give the same sound at the instant itself, whatever the filter.
 * How far they are apart there, against what both leave, is the evidence (the regression
 * discontinuity of D. L. Thistlethwaite and D. T. Campbell, J. Educ. Psych. 51, 1960, from memory;
 * the odds derived as for any one complex parameter more in noise of unknown level). Where the
 * level jumps by more than the phase does nothing was cut, but the gain was moved.
 *
 * @param at the instant, in samples of the return
 * @param odds the logarithm of likelihoods by which the sound jumps there, less that of the number
 *     of samples at which it might
 * @param louderDb by how many dB the sound is louder after it than before
 */
public record PhaseJump(int at, double odds, double louderDb) {
  /** How long a side is at most, in seconds, and of a short sweep: 0.4 octaves of a whole one. */
  private static final double SIDE_SECONDS = 0.04;

  private static final int SIDES = 25;

  /** How often the sound crosses zero in a side at least: with fewer waves it has no one gain. */
  private static final int CROSSINGS = 3;

  /** Instants are tried so many times in each side's length, and the best few looked at closely. */
  private static final int PER_SIDE = 8;

  private static final int LOOKED_AT = 2;
  private static final int CLOSELY = 8;

  /**
   * The jump in a return, if there is one: anywhere, or where one delay gives way to another.
   *
   * @param reading of a sweep
   * @param sides the delays before and after it
   */
  public static Optional<PhaseJump> of(Reading reading, Sides sides) {
    return likeliest(reading, sides, false).filter(jump -> jump.odds > Odds.BEYOND_DOUBT);
  }

  /** Where the level jumps instead, with one delay on both sides, if it does. */
  public static Optional<PhaseJump> ofLevel(Reading reading, int delay) {
    return likeliest(reading, new Sides(delay, delay), true)
        .filter(jump -> jump.odds > Odds.BEYOND_DOUBT);
  }

  /**
   * The likeliest place for one, however unlikely.
   *
   * @param isLevel whether for one of the level
   */
  static Optional<PhaseJump> likeliest(Reading reading, Sides sides, boolean isLevel) {
    int side =
        Math.min(reading.rate().samplesIn(SIDE_SECONDS), reading.reference().length() / SIDES);
    int length = reading.reference().length() - Math.abs(sides.before() - sides.after());
    if (side < PER_SIDE || length <= 2 * side) {
      return Optional.empty();
    }
    Search search = new Search(reading, sides, length, side, isLevel);
    return sides.before() == sides.after()
        ? search.best(0, search.length, side / PER_SIDE)
        : search.near(sides.change(reading));
  }

  /** The sounds of both delays beside the return, over the samples where both have a reference. */
  private static final class Search {
    private final GainCurve before;
    private final GainCurve after;
    private final boolean isTwo;
    private final boolean isLevel;
    private final int from;
    private final int length;
    private final int side;

    Search(Reading reading, Sides sides, int length, int side, boolean isLevel) {
      this.isLevel = isLevel;
      this.isTwo = sides.before() != sides.after();
      this.from = Math.max(sides.before(), sides.after());
      this.length = length;
      this.side = side;
      double[] quadrature = quadrature(reading);
      double[] ret = new double[length];
      reading.ret().copyTo(from, ret, 0, length);
      this.before = gain(reading, quadrature, from - sides.before(), ret);
      this.after = isTwo ? gain(reading, quadrature, from - sides.after(), ret) : before;
    }

    private static double[] quadrature(Reading reading) {
      int length = reading.reference().length();
      RealFft fft = new RealFft(RealFft.lengthFor(length));
      double[] quadrature = new double[fft.length()];
      reading.reference().copyTo(0, quadrature, 0, length);
      fft.forward(quadrature);
      Packed.hilbertTransform(quadrature);
      fft.inverse(quadrature);
      return quadrature;
    }

    private GainCurve gain(Reading reading, double[] quadrature, int first, double[] ret) {
      double[] sent = new double[ret.length];
      reading.reference().copyTo(first, sent, 0, sent.length);
      return new GainCurve(
          sent, Arrays.copyOfRange(quadrature, first, first + sent.length), ret, side);
    }

    /** The likeliest place within a side's length of one, if both delays are asked for there. */
    Optional<PhaseJump> near(int change) {
      int first = Math.max(side, change - from - side);
      int last = Math.min(length - side, change - from + side);
      for (int at = first; at <= last; at += side) {
        if (!isOneDelay(place(at))) {
          return best(first, last, 4 * CLOSELY);
        }
      }
      return Optional.empty();
    }

    Optional<PhaseJump> best(int first, int end, int step) {
      List<Place> places = new ArrayList<>();
      for (int at = Math.max(side, first); at < Math.min(end, length - side); at += step) {
        if (before.crossings(at - side, at) >= CROSSINGS) {
          places.add(place(at));
        }
      }
      places.sort(Comparator.comparingDouble(Place::height).reversed());
      PhaseJump best = null;
      for (Place rough : places.subList(0, Math.min(LOOKED_AT, places.size()))) {
        Place close = highest(highest(rough, step, CLOSELY), CLOSELY, 1);
        double values = values(left(close));
        double odds = values / 2 * Math.log1p(close.height()) - Math.log(length);
        PhaseJump jump = new PhaseJump(from + close.at, odds, Decibels.ofFactor(close.louder()));
        boolean is = close.isHeard(values / 2) && close.jumps(isLevel) && !isOneDelay(close);
        best = is && (best == null || jump.odds > best.odds) ? jump : best;
      }
      return Optional.ofNullable(best);
    }

    /** Whether one of two delays does as well on both sides. */
    private boolean isOneDelay(Place place) {
      if (!isTwo) {
        return false;
      }
      int at = place.at;
      double later = before.over(at, at).left() - place.after.left();
      double earlier = after.over(at - side, at).left() - place.before.left();
      return Math.min(later, earlier) <= 0;
    }

    /** The highest place less than some samples from one. */
    private Place highest(Place near, int within, int step) {
      Place highest = near;
      for (int at = near.at - within + step; at < near.at + within; at += step) {
        if (at >= side && at + side <= length) {
          Place place = place(at);
          highest = place.height() > highest.height() ? place : highest;
        }
      }
      return highest;
    }

    private Place place(int at) {
      return new Place(at, before.over(at - side, at), after.over(at, at));
    }

    /** What both curves leave around a place, freed of the sweep: what bends is of few values. */
    private double[][] left(Place place) {
      double[][] left = new double[2][2 * side];
      before.leave(place.before, place.at - side, place.at, left, 0);
      after.leave(place.after, place.at, place.at, left, side);
      return left;
    }
  }

  /** An instant, and the sound at it by the curves before and after. */
  private record Place(int at, GainCurve.Fitted before, GainCurve.Fitted after) {
    /** What joining both curves would leave more, against what they leave. */
    double height() {
      return after.sound().less(before.sound()).energy()
          / Math.max(Double.MIN_NORMAL, before.left() + after.left());
    }

    /**
     * Whether there is sound on both sides: where it starts or ends nothing was joined.
     *
     * @param values how many independent values are left on each
     */
    boolean isHeard(double values) {
      return before.isHeard(values) && after.isHeard(values);
    }

    double louder() {
      return after.sound().magnitude() / before.sound().magnitude();
    }

    /**
     * Whether the phase jumps by more than the level's logarithm does, or the other way round, and
     * the sound by more than either curve's slope changes it over its length: what bends there may
     * look like a jump.
     */
    boolean jumps(boolean isLevel) {
      GainCurve.Sound was = before.sound();
      GainCurve.Sound is = after.sound();
      double turned =
          Math.atan2(
              is.im() * was.re() - is.re() * was.im(), is.re() * was.re() + is.im() * was.im());
      boolean moreLevel = Math.abs(turned) < Math.abs(Math.log(louder()));
      double jump = is.less(was).magnitude();
      return moreLevel == isLevel && jump > before.change() && jump > after.change();
    }
  }

  /**
   * How many independent values a complex sound holds at least: by how many bins would carry it, if
   * all carried alike, and how many samples.
   */
  private static double values(double[][] sound) {
    int length = sound[0].length;
    RealFft fft = new RealFft(RealFft.lengthFor(length));
    double[] powers = new double[fft.length() / 2];
    double[] energies = new double[length];
    for (double[] part : sound) {
      for (int i = 0; i < length; i++) {
        energies[i] += part[i] * part[i];
      }
      double[] packed = Arrays.copyOf(part, fft.length());
      fft.forward(packed);
      powers[0] += packed[0] * packed[0];
      for (int k = 1; k < powers.length; k++) {
        powers[k] += Packed.power(packed, k);
      }
    }
    return length * evenness(powers) * evenness(energies);
  }

  /** The squared mean over the mean square, 1 where all are alike. */
  private static double evenness(double[] values) {
    double sum = 0;
    double squares = Double.MIN_NORMAL;
    for (double value : values) {
      sum += value;
      squares += value * value;
    }
    return sum * sum / squares / values.length;
  }
}
