package dev.loopgauge.stats;

import java.util.Arrays;

/**
 * A straight line by least squares (JCGM 100:2008, annex H.3; N. R. Draper and H. Smith, "Applied
 * Regression Analysis", chapter 1; both from memory).
 *
 * @param middleX the weighted mean of x
 * @param middleY the weighted mean of y, which the line passes there
 * @param slope by how much y rises for each unit of x; 0 where all x are one
 * @param spread the weighted sum of the squared distances of x from its mean
 * @param squares the weighted sum of the squared distances of y from the line
 * @param slopeNoise the standard uncertainty of the slope from the stated noise of each y; 0 where
 *     none was stated
 * @param count how many points have weight
 */
public record StraightLine(
    double middleX,
    double middleY,
    double slope,
    double spread,
    double squares,
    double slopeNoise,
    int count) {
  /**
   * The line through points that count alike.
   *
   * @param noise the standard uncertainty of each y from noise alone, 0 where it isn't known
   * @throws IllegalArgumentException when there is no point, or the lengths differ
   */
  public static StraightLine even(double[] x, double[] y, double[] noise) {
    double[] weights = new double[x.length];
    Arrays.fill(weights, 1);
    StraightLine bare = weighted(x, y, weights);
    double variance = 0;
    for (int i = 0; i < x.length; i++) {
      double share = bare.spread == 0 ? 0 : (x[i] - bare.middleX) * noise[i] / bare.spread;
      variance += share * share;
    }
    return bare.withSlopeNoise(Math.sqrt(variance));
  }

  /**
   * The line through points of known noise, each of which counts by one over its variance.
   *
   * @param noise the standard uncertainty of each y from noise alone, above 0
   * @throws IllegalArgumentException when there is no point, or the lengths differ
   */
  public static StraightLine byNoise(double[] x, double[] y, double[] noise) {
    double[] weights = Arrays.stream(noise).map(n -> 1 / (n * n)).toArray();
    StraightLine bare = weighted(x, y, weights);
    return bare.withSlopeNoise(bare.spread == 0 ? 0 : 1 / Math.sqrt(bare.spread));
  }

  /**
   * The line through points that count by their weights.
   *
   * @param weights 0 or more, not all 0; one over the variance of each y where that is known
   * @throws IllegalArgumentException when no point has weight, or the lengths differ
   */
  public static StraightLine weighted(double[] x, double[] y, double[] weights) {
    check(x, y, weights);
    double sum = 0;
    int count = 0;
    double middleX = 0;
    double middleY = 0;
    for (int i = 0; i < x.length; i++) {
      sum += weights[i];
      count += weights[i] > 0 ? 1 : 0;
      middleX += weights[i] * x[i];
      middleY += weights[i] * y[i];
    }
    if (!(sum > 0)) {
      throw new IllegalArgumentException("a line needs a point with weight, not weights of " + sum);
    }
    StraightLine flat = new StraightLine(middleX / sum, middleY / sum, 0, 0, 0, 0, count);
    return flat.tilted(x, y, weights);
  }

  private static void check(double[] x, double[] y, double[] weights) {
    if (x.length != y.length || x.length != weights.length) {
      throw new IllegalArgumentException(
          "a line needs as many x, y and weights, not "
              + x.length
              + ", "
              + y.length
              + " and "
              + weights.length);
    }
  }

  private StraightLine tilted(double[] x, double[] y, double[] weights) {
    double across = 0;
    double product = 0;
    for (int i = 0; i < x.length; i++) {
      double since = x[i] - middleX;
      across += weights[i] * since * since;
      product += weights[i] * since * (y[i] - middleY);
    }
    double rise = across == 0 ? 0 : product / across;
    double left = 0;
    for (int i = 0; i < x.length; i++) {
      double off = y[i] - middleY - rise * (x[i] - middleX);
      left += weights[i] * off * off;
    }
    return new StraightLine(middleX, middleY, rise, across, left, 0, count);
  }

  private StraightLine withSlopeNoise(double noise) {
    return new StraightLine(middleX, middleY, slope, spread, squares, noise, count);
  }

  /** The line at a place. */
  public double at(double x) {
    return middleY + slope * (x - middleX);
  }

  /** The standard deviation of points of weight 1 about the line; 0 for fewer than three points. */
  public double scatter() {
    return count > 2 ? Math.sqrt(squares / (count - 2)) : 0;
  }
}
