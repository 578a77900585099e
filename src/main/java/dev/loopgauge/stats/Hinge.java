package dev.loopgauge.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Values that keep to a level until some moment and leave it along a line: the moment is sought,
 * and what it leaves open of the line's slope is part of the slope's uncertainty (by the likelihood
 * of the values; S. A. Murphy, A. W. van der Vaart, "On Profile Likelihood", Journal of the
 * American Statistical Association 95, 2000, from memory).
 *
 * @param at the moment that explains the values best; the first of them where they are one line
 * @param slope by how much the values rise for each unit of x from there on
 */
public record Hinge(double at, Slope slope) {
  /** The level before, the slope and the moment. */
  private static final int FITTED = 3;

  /**
   * Through values of known noise.
   *
   * @param x rising
   * @param noise the standard uncertainty of each y from noise alone, above 0
   * @param sloping how many of the last values lie on the line at least, 2 or more and no more than
   *     there are
   */
  public static Hinge of(double[] x, double[] y, double[] noise, int sloping) {
    List<Fitted> all = new ArrayList<>();
    for (int i = 0; i <= x.length - sloping; i++) {
      StraightLine line = at(x[i], x, y, noise);
      all.add(new Fitted(x[i], line, line.squares(), -Double.MAX_VALUE, Double.MAX_VALUE));
      if (i > 0) {
        all.add(before(i, x, y, noise));
      }
    }
    Fitted best =
        all.stream()
            .filter(Fitted::isPossible)
            .min(Comparator.comparingDouble(Fitted::squares))
            .orElseThrow();
    return new Hinge(best.at, best.slope(all, x.length));
  }

  /** The line over what of x is beyond a moment. */
  public static StraightLine at(double moment, double[] x, double[] y, double[] noise) {
    double[] beyond = Arrays.stream(x).map(t -> Math.max(0, t - moment)).toArray();
    return StraightLine.byNoise(beyond, y, noise);
  }

  /** The line from one value on, which is to meet the level of those before between the two. */
  private static Fitted before(int first, double[] x, double[] y, double[] noise) {
    StraightLine level = part(new double[x.length], y, noise, 0, first);
    StraightLine line = part(x, y, noise, first, x.length);
    double rise = line.middleY() - level.middleY();
    double early = rise / (line.middleX() - x[first - 1]);
    double late = rise / (line.middleX() - x[first]);
    return new Fitted(
        line.middleX() - rise / line.slope(),
        line,
        level.squares() + line.squares(),
        Math.min(early, late),
        Math.max(early, late));
  }

  private static StraightLine part(double[] x, double[] y, double[] noise, int from, int to) {
    return StraightLine.byNoise(
        Arrays.copyOfRange(x, from, to),
        Arrays.copyOfRange(y, from, to),
        Arrays.copyOfRange(noise, from, to));
  }

  /**
   * A line.
   *
   * @param at the moment that it leaves the level
   * @param line the line
   * @param squares the weighted sum of the squared distances of all values
   * @param least the least slope at which it leaves the level where it is to
   * @param most the largest
   */
  private record Fitted(double at, StraightLine line, double squares, double least, double most) {
    boolean isPossible() {
      return line.slope() >= least && line.slope() <= most;
    }

    /**
     * The slope, as uncertain as all slopes are that explain the values nearly as well: within the
     * expanded uncertainty and within twice that, where other moments may come in.
     */
    Slope slope(List<Fitted> all, int count) {
      double noise = line.slopeNoise();
      int degrees = Math.max(0, count - FITTED);
      double scatter = degrees > 0 ? noise * Math.sqrt(squares / degrees) : 0;
      Slope alone = new Slope(line.slope(), noise, scatter, degrees);
      double expanded = alone.expanded();
      double apart = Math.max(within(expanded, all), within(2 * expanded, all) / 2);
      double wider = Math.max(1, apart / expanded);
      return new Slope(line.slope(), noise * wider, scatter * wider, degrees);
    }

    /** How far off slopes lie that are as likely as this one is so far off. */
    private double within(double apart, List<Fitted> all) {
      double limit = squares + Math.pow(apart / line.slopeNoise(), 2);
      return all.stream().mapToDouble(f -> f.furthest(limit, line.slope())).max().orElse(0);
    }

    /** How far from one the slopes lie that leave no more than a limit; 0 where none does. */
    private double furthest(double limit, double from) {
      double width = Math.sqrt(Math.max(0, limit - squares)) * line.slopeNoise();
      double low = Math.max(least, line.slope() - width);
      double high = Math.min(most, line.slope() + width);
      return squares > limit || low > high
          ? 0
          : Math.max(Math.abs(low - from), Math.abs(high - from));
    }
  }
}
