package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.stats.Odds;
import dev.loopgauge.stats.Quantiles;

/**
 * By how much a path delays the lower and the upper half of the band differently, so that it has no
 * one delay. The halves are those of the reference's share of R''. One fades into the other: with a
 * sharp edge between them they would ring, and show what lies at lags far off.
 */
final class Dispersion {
  /** How far the fade reaches to either side of the middle, as a share of it. */
  private static final double FADE = 0.1;

  private static final int STEPS = 16;

  private final CrossSpectrum cross;
  private final Residual residual;
  private final double lag;

  /** The dispersion that a correlation shows at its peak. */
  Dispersion(CrossSpectrum cross, Residual residual, double lag) {
    this.cross = cross;
    this.residual = residual;
    this.lag = lag;
  }

  /** A half of the band: R' and R'' from it, and the variance of R'. */
  private static final class Half {
    private double slope;
    private double curvature;
    private double variance;

    void add(double weight, CrossSpectrum.Point part, double partVariance) {
      slope += weight * part.slope();
      curvature += weight * part.curvature();
      variance += weight * weight * partVariance;
    }

    double later() {
      return -slope / curvature;
    }

    double standard() {
      return Math.sqrt(variance) / Math.abs(curvature);
    }
  }

  /**
   * The standard uncertainty that comes of it, in samples: half of what lies between the delays of
   * the halves, rectangular; 0 where noise explains it.
   */
  double standard() {
    Half low = new Half();
    Half high = new Half();
    int usable = residual.usableBins();
    int middle = middleBin();
    int fadeFrom = Math.max(1, (int) ((1 - FADE) * middle));
    int fadeTo = Math.min(usable, (int) ((1 + FADE) * middle) + 1);
    add(1, fadeFrom, 1, low, high);
    for (int i = 0; i < STEPS; i++) {
      int from = fadeFrom + (fadeTo - fadeFrom) * i / STEPS;
      int to = fadeFrom + (fadeTo - fadeFrom) * (i + 1) / STEPS;
      add(from, to, 1 - (i + 0.5) / STEPS, low, high);
    }
    add(fadeTo, usable, 0, low, high);
    double apart = Math.abs(low.later() - high.later());
    double noise = Math.hypot(low.standard(), high.standard());
    double byChance = Math.sqrt(Quantiles.chiSquareBeyond(Odds.BY_CHANCE, 1)) * noise;
    return apart > byChance ? apart / Math.sqrt(12) : 0;
  }

  private void add(int from, int to, double inLow, Half low, Half high) {
    if (from < to) {
      int scale = cross.plan().transform() / (2 * residual.bins());
      CrossSpectrum.Point part = cross.at(lag, from * scale, to * scale - 1);
      double variance = residual.slopeVariance(0, from, to);
      low.add(inLow, part, variance);
      high.add(1 - inLow, part, variance);
    }
  }

  /** The bin that halves the reference's share of R''. */
  private int middleBin() {
    double half = residual.secondMoment(0, 1, residual.usableBins()) / 2;
    double sum = 0;
    int bin = 1;
    while (bin < residual.usableBins() - 1 && sum < half) {
      sum += residual.secondMoment(0, bin, bin + 1);
      bin++;
    }
    return bin;
  }
}
