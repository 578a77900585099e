package dev.loopgauge.estimate.path;

import static dev.loopgauge.estimate.spectrum.ConjugateGradients.dot;

import dev.loopgauge.estimate.integrity.Clipping;
import dev.loopgauge.estimate.spectrum.ConjugateGradients;
import dev.loopgauge.estimate.spectrum.FilteredReference;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.estimate.spectrum.ToeplitzSystem;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.stats.NormalTail;
import java.util.BitSet;

/**
 * By how much clipped samples move a delay: the path is fitted once more without them. Those beside
 * them still are what the path made of the reference, whatever a converter did at its limit; but
 * where noise decides which is clipped, the others are a biased choice. So from that fit follows as
 * well what the clipped samples would have been in that noise (J. Tobin, "Estimation of
 * relationships for limited dependent variables", Econometrica 26(1), 1958, from memory), and from
 * these what they take away. The larger of the two counts.
 *
 * <p>The fit solves X' X h = X' y over the samples that aren't clipped, rows of X being the
 * reference's samples around each. With e what the clipped samples lack, the fit to all samples
 * lacks the taps d of X' X d = X' e. The delay is where the correlation R(t) = sum over j of h[j]
 * Rxx(t - j) peaks, and lacks g' d with g[j] = -Rxx'(t - j) / R''(t); its variance is g' (X' X)^-1
 * g times that of the noise. (All derived.)
 */
final class UnclippedFit {
  private static final double RIDGE = 1e-9;

  /** Half the distance over which slopes are taken, in samples. */
  private static final double BESIDE = 0.01;

  /** The least noise that the arithmetic leaves, as a share of a limit. */
  private static final double LEAST_NOISE = 1e-12;

  private final Spectra spectra;
  private final Fit fit;
  private final Explained explained;
  private final BitSet clipped;
  private final FilteredReference reference;
  private final double[] auto;

  /**
   * A fit of one reading.
   *
   * @param explained what the fit to all samples makes of it
   * @param clipped which samples are clipped
   */
  UnclippedFit(Spectra spectra, Fit fit, Explained explained, BitSet clipped) {
    this.spectra = spectra;
    this.fit = fit;
    this.explained = explained;
    this.clipped = clipped;
    this.reference = new FilteredReference(spectra.readings().get(0), spectra.reach());
    this.auto = spectra.auto().lagsFrom(0, 2 * spectra.reach() + 1);
    auto[0] *= 1 + RIDGE;
  }

  /**
   * What the clipped samples do.
   *
   * @param share the share of samples to tell
   */
  Clipping clipping(double share) {
    ConjugateGradients system =
        new ConjugateGradients(this::normal, taps -> ToeplitzSystem.solve(auto, taps));
    double lag = fit.peak().lag() - Explained.wholeDelay(fit);
    double[] gradient = gradient(lag);
    double variance = dot(gradient, ToeplitzSystem.solve(auto, gradient));
    double most = Clipping.MOST_SPREAD * variance;
    double spread = dot(gradient, system.solve(gradient, most)) / variance;
    if (!(spread < Clipping.MOST_SPREAD)) {
      return new Clipping(share, 0, spread, 0);
    }
    double[] free = system.solve(reference.times(lost()), Double.POSITIVE_INFINITY);
    double[] lacks = ToeplitzSystem.solve(auto, reference.times(excess(reference.rows(free))));
    double moved = Math.max(Math.abs(dot(gradient, free)), Math.abs(dot(gradient, lacks)));
    double gain = dot(correlations(lag), lacks) / fit.peak().value();
    double movedDb = Math.abs(Decibels.ofFactor(1 + gain));
    return new Clipping(share, moved, Math.max(1, spread), movedDb);
  }

  private double[] normal(double[] taps) {
    double[] product = reference.normal(taps, clipped);
    for (int i = 0; i < taps.length; i++) {
      product[i] += RIDGE * auto[0] * taps[i];
    }
    return product;
  }

  /**
   * What the clipped samples lack against what the fit explains; the others their mean residual,
   * which is an offset.
   */
  private double[] lost() {
    double[] lost = new double[explained.ret().length];
    double offset = 0;
    for (int i = 0; i < lost.length; i++) {
      lost[i] = explained.found()[i] - explained.ret()[i];
      offset += clipped.get(i) ? 0 : lost[i];
    }
    offset /= lost.length - clipped.cardinality();
    for (int i = 0; i < lost.length; i++) {
      lost[i] = clipped.get(i) ? lost[i] : offset;
    }
    return lost;
  }

  /**
   * By how much each clipped sample would be expected beyond its limit by the fit to all others, in
   * their noise; 0 elsewhere.
   *
   * @param change what that fit explains more than the fit to all samples
   */
  private double[] excess(double[] change) {
    double[] residual = new double[change.length];
    double squares = 0;
    for (int i = 0; i < change.length; i++) {
      residual[i] = explained.ret()[i] - explained.found()[i] - change[i];
      squares += clipped.get(i) ? 0 : residual[i] * residual[i];
    }
    double standard = Math.sqrt(squares / (change.length - clipped.cardinality()));
    double[] excess = new double[change.length];
    clipped.stream()
        .forEach(
            i -> {
              double side = Math.signum(explained.ret()[i]);
              double noise = Math.max(standard, LEAST_NOISE * Math.abs(explained.ret()[i]));
              excess[i] = side * noise * NormalTail.meanExcess(side * residual[i] / noise);
            });
    return excess;
  }

  /** By how much the delay changes with each tap. */
  private double[] gradient(double lag) {
    double[] before = correlations(lag - BESIDE);
    double[] after = correlations(lag + BESIDE);
    double[] gradient = new double[before.length];
    for (int i = 0; i < gradient.length; i++) {
      gradient[i] = -(after[i] - before[i]) / (2 * BESIDE) / fit.peak().curvature();
    }
    return gradient;
  }

  /** How much each tap adds to the correlation at a lag. */
  private double[] correlations(double lag) {
    double[] around = spectra.auto().lagsFrom(lag - spectra.reach(), auto.length);
    double[] ofTaps = new double[around.length];
    for (int i = 0; i < ofTaps.length; i++) {
      ofTaps[i] = around[around.length - 1 - i];
    }
    return ofTaps;
  }
}
