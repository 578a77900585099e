package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.result.Response;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Decibels;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws the envelope of a deconvolved correlation: the magnitude of its analytic signal, which is
 * the root of the squares of itself and of its Hilbert transform (D. Gabor, "Theory of
 * communication", 1946, from memory). The band is tapered by Hann's window, so that an arrival's
 * own skirts fall fast and hide no other.
 */
final class ResponseCurve {
  /** How far it reaches before the first and after the last arrival, in seconds. */
  private static final double MARGIN_SECONDS = 0.01;

  private static final int MOST_POINTS = 512;

  /** Where the pulse holds less than this of its most, its band has ended. */
  private static final double BAND_EDGE = 0.1;

  private final Deconvolved deconvolved;
  private final int first;
  private final int count;

  /** The curve around some arrivals, at least one. */
  ResponseCurve(Spectra spectra, Deconvolved deconvolved, List<FittedArrival> arrivals) {
    this.deconvolved = deconvolved;
    int margin = spectra.rate().samplesIn(MARGIN_SECONDS);
    double earliest = arrivals.get(0).lag();
    double latest = earliest;
    for (FittedArrival arrival : arrivals) {
      earliest = Math.min(earliest, arrival.lag());
      latest = Math.max(latest, arrival.lag());
    }
    int furthest = spectra.auto().plan().maxLag();
    this.first = Math.max(-furthest, (int) Math.floor(earliest) - margin);
    this.count = Math.min(furthest, (int) Math.ceil(latest) + margin) - first + 1;
  }

  /** The response. */
  Response draw() {
    CrossSpectrum tapered = deconvolved.cross().weighted(taper());
    double[] real = tapered.lagsFrom(first, count);
    double[] imaginary = tapered.quadratureFrom(first, count);
    int step = (count + MOST_POINTS - 1) / MOST_POINTS;
    double[] highest = new double[(count + step - 1) / step];
    for (int i = 0; i < count; i++) {
      highest[i / step] = Math.max(highest[i / step], Math.hypot(real[i], imaginary[i]));
    }
    double most = highest[PeakSearch.strongest(highest)];
    List<Double> levels = new ArrayList<>();
    for (double value : highest) {
      levels.add(Math.max(Response.FLOOR_DB, Decibels.ofFactor(value / most)));
    }
    return new Response(first, step, levels);
  }

  private double[] taper() {
    double[] band = deconvolved.band();
    double edge = BAND_EDGE * band[PeakSearch.strongest(band)];
    int low = 0;
    int high = band.length - 1;
    while (low < high && band[low] <= edge) {
      low++;
    }
    while (high > low && band[high] <= edge) {
      high--;
    }
    double[] taper = new double[band.length];
    for (int k = low; k <= high; k++) {
      taper[k] = 0.5 - 0.5 * Math.cos(2 * Math.PI * (k - low + 0.5) / (high - low + 1));
    }
    return taper;
  }
}
