package dev.loopgauge.stats;

import java.util.List;

/**
 * A slope with what it rests on: the noise that each point is known to have, and the scatter about
 * the line, which tells of all that moves the points besides.
 *
 * @param value the slope
 * @param fromNoise its standard uncertainty from the known noise of the points; 0 where unknown
 * @param fromScatter its standard uncertainty from the scatter about the line; 0 without degrees of
 *     freedom
 * @param degrees the degrees of freedom of the scatter: points less offsets less one, 0 or more
 */
public record Slope(double value, double fromNoise, double fromScatter, int degrees) {
  /**
   * Checks that all are numbers.
   *
   * @throws IllegalArgumentException when one is not finite, or an uncertainty or the degrees of
   *     freedom are negative
   */
  public Slope {
    if (!Double.isFinite(value)
        || !(fromNoise >= 0 && Double.isFinite(fromNoise))
        || !(fromScatter >= 0 && Double.isFinite(fromScatter))
        || degrees < 0) {
      throw new IllegalArgumentException(
          "a slope and its uncertainties must be finite, not "
              + (value + ", " + fromNoise + ", " + fromScatter)
              + (" on " + degrees + " degrees of freedom"));
    }
  }

  /** The slope of one line. */
  public static Slope of(StraightLine line) {
    return of(List.of(line));
  }

  /**
   * The slope that lines have in common, each with an offset of its own.
   *
   * @param lines at least one
   */
  public static Slope of(List<StraightLine> lines) {
    double spread = 0;
    double product = 0;
    double noise = 0;
    int degrees = -1;
    for (StraightLine line : lines) {
      spread += line.spread();
      product += line.spread() * line.slope();
      noise += Math.pow(line.spread() * line.slopeNoise(), 2);
      degrees += line.count() - 1;
    }
    if (spread == 0) {
      return new Slope(0, 0, 0, 0);
    }
    double slope = product / spread;
    double squares = 0;
    for (StraightLine line : lines) {
      squares += line.squares() + line.spread() * Math.pow(line.slope() - slope, 2);
    }
    double scatter = degrees > 0 ? Math.sqrt(squares / degrees / spread) : 0;
    return new Slope(slope, Math.sqrt(noise) / spread, scatter, Math.max(0, degrees));
  }

  /**
   * Whether the slope is there, so that a flat line gives as much no more often than {@code
   * chance}.
   *
   * <p>Two tests must hold. The known noise is known to many degrees of freedom: against it the
   * slope is a normal value. What else moves the points, jitter, is known by the scatter alone:
   * against that the slope follows Student's t with the degrees of freedom of the scatter. Where
   * there is no jitter the first keeps the chance, where there is much the second (exactly so for
   * normal jitter that is alike at all points); in between both are stricter than needed. Points
   * without a degree of freedom to spare can't tell a slope from jitter.
   *
   * @param chance of a false alarm, 0 to 1
   */
  public boolean isThere(double chance) {
    return TwoTests.passes(value, fromNoise, fromScatter, degrees, chance);
  }

  /**
   * The expanded uncertainty (k = 2, JCGM 100:2008, annex G): what the noise or, by Student's t,
   * the scatter covers {@value Quantiles#TWO_SIGMA} of, whichever is larger.
   */
  public double expanded() {
    return TwoTests.expanded(fromNoise, fromScatter, degrees);
  }

  /** The same slope in another unit, of which one of this has {@code factor}. */
  public Slope times(double factor) {
    return new Slope(
        value * factor, fromNoise * Math.abs(factor), fromScatter * Math.abs(factor), degrees);
  }
}
