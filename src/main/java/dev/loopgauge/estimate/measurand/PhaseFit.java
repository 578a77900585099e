package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.spectrum.SymmetricSystem;

/**
 * Phases as a sum of shapes on top of some half turns, by weighted least squares. Phases that
 * slipped by whole turns count as they are nearest to the sum.
 */
final class PhaseFit {
  private static final int PASSES = 4;

  private final double[] weights;
  private final double[] rest;
  private final double delay;

  private PhaseFit(double[] weights, double[] rest, double delay) {
    this.weights = weights;
    this.rest = rest;
    this.delay = delay;
  }

  /**
   * The fit.
   *
   * @param shapes for each shape its values at the phases; the first is the frequency
   * @param phases in radians, at least as many as shapes
   */
  static PhaseFit of(double[][] shapes, double[] weights, double[] phases, int halfTurns) {
    SymmetricSystem system = new SymmetricSystem(products(shapes, weights));
    double[] factors = new double[shapes.length];
    double[] rest = phases.clone();
    for (int i = 0; i < rest.length; i++) {
      rest[i] -= halfTurns * Math.PI;
    }
    for (int pass = 0; pass < PASSES; pass++) {
      double[] more = system.solve(products(shapes, weights, rest));
      for (int k = 0; k < shapes.length; k++) {
        factors[k] += more[k];
      }
      for (int i = 0; i < rest.length; i++) {
        rest[i] = phases[i] - halfTurns * Math.PI;
        for (int k = 0; k < shapes.length; k++) {
          rest[i] -= factors[k] * shapes[k][i];
        }
        rest[i] = BandResponse.nearest(rest[i], 0);
      }
    }
    return new PhaseFit(weights, rest, -factors[0]);
  }

  private static double[][] products(double[][] shapes, double[] weights) {
    double[][] products = new double[shapes.length][];
    for (int k = 0; k < products.length; k++) {
      products[k] = products(shapes, weights, shapes[k]);
    }
    return products;
  }

  private static double[] products(double[][] shapes, double[] weights, double[] values) {
    double[] products = new double[shapes.length];
    for (int k = 0; k < products.length; k++) {
      for (int i = 0; i < values.length; i++) {
        products[k] += weights[i] * shapes[k][i] * values[i];
      }
    }
    return products;
  }

  /** How far the phase falls with frequency beside the other shapes, in samples. */
  double delay() {
    return delay;
  }

  /** The weighted squares that it leaves, 2 (1 - cos) of each phase. */
  double residual() {
    double residual = 0;
    for (int i = 0; i < rest.length; i++) {
      residual += weights[i] * 2 * (1 - Math.cos(rest[i]));
    }
    return residual;
  }
}
