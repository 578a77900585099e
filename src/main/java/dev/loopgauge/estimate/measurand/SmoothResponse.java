package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.path.PathModel;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.stats.Smoother;
import java.util.Arrays;

/** A response in bands with its noise smoothed away: ln of the magnitude and phase as curves. */
final class SmoothResponse implements PathModel {
  private final BandResponse response;
  private final Smoother.Curve magnitude;
  private final Smoother.Curve phase;

  /** The smooth curves through a response of at least four bands. */
  SmoothResponse(BandResponse response) {
    this.response = response;
    double[] variances = response.variances();
    this.magnitude = Smoother.through(response.logMagnitudes(), variances);
    this.phase = Smoother.through(response.phases(0), variances);
  }

  @Override
  public double delay() {
    return response.lag();
  }

  @Override
  public int taps() {
    return (int) Math.ceil(magnitude.parameters() + phase.parameters());
  }

  @Override
  public double[] spectrum(RealFft fft) {
    double[] omegas = response.omegas();
    double[] packed = new double[fft.length()];
    double perBin = 2 * Math.PI / fft.length();
    double lowest = omegas[0] - response.bands().get(0).width() / 2;
    int last = omegas.length - 1;
    double highest = omegas[last] + response.bands().get(last).width() / 2;
    for (int k = 1; k < fft.length() / 2; k++) {
      double omega = k * perBin;
      if (omega < lowest || omega > highest) {
        continue;
      }
      int above = Arrays.binarySearch(omegas, omega);
      int right = Math.max(1, Math.min(last, above < 0 ? -above - 1 : above));
      double part = (omega - omegas[right - 1]) / (omegas[right] - omegas[right - 1]);
      double size = Math.exp(between(magnitude.values(), right, part));
      double turn = between(phase.values(), right, part);
      packed[2 * k] = size * Math.cos(turn);
      packed[2 * k + 1] = size * Math.sin(turn);
    }
    return packed;
  }

  private static double between(double[] values, int right, double part) {
    return values[right - 1] + part * (values[right] - values[right - 1]);
  }
}
