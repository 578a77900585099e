package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.SymmetricSystem;
import java.util.List;

/**
 * How far arrivals of one reference can be told from each other. Where a reference is like itself
 * at another lag, as a loop is or music of few notes, an arrival there looks nearly like the
 * arrival here, and both are less sure than each would be alone.
 *
 * <p>The return is a sum of gain times reference(t - delay). By the gain and the delay of each
 * arrival it has the derivatives u = reference(t - delay) and v = -reference'(t - delay), whose
 * products are values and derivatives of the reference's correlation with itself. The inverse of
 * the matrix of these products is, times the noise's variance, the covariance of all gains and
 * delays fitted at once (S. M. Kay, "Estimation Theory", sections 3.8 and 4.3, from memory).
 */
final class MutualUncertainty {
  private final List<FittedArrival> arrivals;
  private final double[][] products;
  private final SymmetricSystem system;

  /**
   * The overlap of some arrivals.
   *
   * @param pulse the correlation of an arrival of gain 1 at lag 0
   */
  MutualUncertainty(CrossSpectrum pulse, List<FittedArrival> arrivals) {
    this.arrivals = arrivals;
    int count = arrivals.size();
    this.products = new double[2 * count][2 * count];
    for (int i = 0; i < count; i++) {
      for (int j = 0; j <= i; j++) {
        CrossSpectrum.Point at = pulse.at(arrivals.get(i).lag() - arrivals.get(j).lag());
        set(i, j, at.value());
        set(count + i, j, at.slope());
        set(count + j, i, -at.slope());
        set(count + i, count + j, -at.curvature());
      }
    }
    this.system = new SymmetricSystem(products);
  }

  private void set(int row, int column, double product) {
    products[row][column] = product;
    products[column][row] = product;
  }

  /** The gains that fit a correlation best, all at once. */
  double[] gains(CrossSpectrum cross) {
    int count = arrivals.size();
    double[] seen = new double[2 * count];
    for (int i = 0; i < count; i++) {
      CrossSpectrum.Point at = cross.at(arrivals.get(i).lag());
      seen[i] = at.value();
      seen[count + i] = at.slope();
    }
    return system.solve(seen);
  }

  /** By what factor an arrival's gain is less sure than if it were the only arrival, 1 or more. */
  double gainWidening(int arrival) {
    double[] one = new double[products.length];
    one[arrival] = 1;
    return Math.sqrt(Math.max(1, products[arrival][arrival] * system.solve(one)[arrival]));
  }
}
