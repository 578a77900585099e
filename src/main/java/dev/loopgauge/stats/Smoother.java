package dev.loopgauge.stats;

/**
 * A smooth curve through values a step apart, by E. T. Whittaker's method ("On a new method of
 * graduation", Proc. Edinburgh Math. Soc. 41, 1923): it minimises the weighted squared distances
 * plus lambda times the squared second differences. Lambda is chosen by generalised
 * cross-validation (P. Craven, G. Wahba, "Smoothing noisy data with spline functions", Numerische
 * Mathematik 31, 1979; both from memory), so that noise of unknown size is told from the curve.
 */
public final class Smoother {
  /** From next to no smoothing to a straight line, for weights of 1 on average. */
  private static final int LEAST_EXPONENT = -12;

  private static final int MOST_EXPONENT = 7;

  private static final int STIFFEST_EXPONENT = 24;

  private final double[] weights;
  private final double lambda;
  private final double[] diagonal;
  private final double[] first;
  private final double[] second;

  private Smoother(double[] weights, double lambda) {
    int n = weights.length;
    this.weights = weights;
    this.lambda = lambda;
    this.diagonal = new double[n];
    this.first = new double[n];
    this.second = new double[n];
    factorise();
  }

  /**
   * What became of some values.
   *
   * @param values the smooth curve
   * @param squares the weighted sum of squared distances from it
   * @param parameters how many free parameters the curve has, 2 to the number of values
   */
  @SuppressWarnings("ArrayRecordComponent") // read where it is made, never compared
  public record Curve(double[] values, double squares, double parameters) {}

  /**
   * The smooth curve through some values.
   *
   * @param values at least four
   * @param variances the variance of each, above 0; only their ratios matter
   * @throws IllegalArgumentException when there are fewer than four, or the counts differ
   */
  public static Curve through(double[] values, double[] variances) {
    if (values.length < 4 || values.length != variances.length) {
      throw new IllegalArgumentException("a curve needs four values or more, not " + values.length);
    }
    double[] weights = weights(variances);
    double mean = Mean.of(weights);
    Curve best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int exponent = LEAST_EXPONENT; exponent <= MOST_EXPONENT; exponent++) {
      Smoother smoother = new Smoother(weights, mean * Math.pow(10, exponent / 2.0));
      Curve curve = smoother.curve(values);
      double free = values.length - curve.parameters();
      double score = curve.squares() / (free * free);
      if (score < least) {
        least = score;
        best = curve;
      }
    }
    return best;
  }

  /**
   * The curve of a fixed stiffness, whatever the values: one that bends about as often as there are
   * parameters.
   *
   * @param parameters how many free parameters the curve has at most, above 2
   */
  public static Curve ofParameters(double[] values, double[] variances, double parameters) {
    double[] weights = weights(variances);
    double mean = Mean.of(weights);
    for (int exponent = LEAST_EXPONENT; exponent < STIFFEST_EXPONENT; exponent++) {
      Curve curve = new Smoother(weights, mean * Math.pow(10, exponent / 2.0)).curve(values);
      if (curve.parameters() <= parameters) {
        return curve;
      }
    }
    return new Smoother(weights, mean * Math.pow(10, STIFFEST_EXPONENT / 2.0)).curve(values);
  }

  private static double[] weights(double[] variances) {
    double[] weights = new double[variances.length];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = 1 / variances[i];
    }
    return weights;
  }

  private Curve curve(double[] values) {
    double[] smooth = smooth(values);
    double squares = 0;
    for (int i = 0; i < values.length; i++) {
      double off = values[i] - smooth[i];
      squares += weights[i] * off * off;
    }
    return new Curve(smooth, squares, parameters());
  }

  /**
   * The trace of what makes the curve of the values, from the bands of the inverse alone (M. F.
   * Hutchinson, F. R. de Hoog, "Smoothing noisy data with spline functions", Numerische Mathematik
   * 47, 1985, from memory).
   */
  private double parameters() {
    int n = weights.length;
    double trace = 0;
    double next = 0;
    double afterNext = 0;
    double between = 0;
    for (int i = n - 1; i >= 0; i--) {
      double one = i + 1 < n ? first[i] : 0;
      double two = i + 2 < n ? second[i] : 0;
      double toNext = -one * next - two * between;
      double toAfterNext = -one * between - two * afterNext;
      double own = 1 / diagonal[i] - one * toNext - two * toAfterNext;
      trace += weights[i] * own;
      afterNext = next;
      next = own;
      between = toNext;
    }
    return trace;
  }

  private double[] smooth(double[] values) {
    double[] weighted = new double[values.length];
    for (int i = 0; i < weighted.length; i++) {
      weighted[i] = weights[i] * values[i];
    }
    return solved(weighted);
  }

  /** Cholesky's factors of the weights plus lambda times the second differences' squares. */
  private void factorise() {
    int n = weights.length;
    for (int i = 0; i < n; i++) {
      double d = weights[i] + lambda * band(i, 0);
      double e = i + 1 < n ? lambda * band(i, 1) : 0;
      double f = i + 2 < n ? lambda * band(i, 2) : 0;
      if (i > 0) {
        d -= first[i - 1] * first[i - 1] * diagonal[i - 1];
        e -= first[i - 1] * second[i - 1] * diagonal[i - 1];
      }
      if (i > 1) {
        d -= second[i - 2] * second[i - 2] * diagonal[i - 2];
      }
      diagonal[i] = d;
      first[i] = e / d;
      second[i] = f / d;
    }
  }

  /** The matrix of second differences times its transpose, at a row and so far right of it. */
  private double band(int row, int right) {
    double sum = 0;
    int n = weights.length;
    for (int start = Math.max(0, row + right - 2); start <= row && start + 2 < n; start++) {
      sum += stencil(row - start) * stencil(row + right - start);
    }
    return sum;
  }

  private static double stencil(int i) {
    return i == 1 ? -2 : 1;
  }

  private double[] solved(double[] right) {
    int n = right.length;
    double[] x = right.clone();
    for (int i = 0; i < n; i++) {
      x[i] -= (i > 0 ? first[i - 1] * x[i - 1] : 0) + (i > 1 ? second[i - 2] * x[i - 2] : 0);
    }
    for (int i = 0; i < n; i++) {
      x[i] /= diagonal[i];
    }
    for (int i = n - 1; i >= 0; i--) {
      x[i] -= (i + 1 < n ? first[i] * x[i + 1] : 0) + (i + 2 < n ? second[i] * x[i + 2] : 0);
    }
    return x;
  }
}
