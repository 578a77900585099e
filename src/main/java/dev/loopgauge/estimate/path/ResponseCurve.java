package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.result.Response;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.estimate.spectrum.RealFft;
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

  /** The response, from the lags around it: further off nothing of its arrivals is left. */
  Response draw() {
    int all = deconvolved.pulse().plan().transform();
    RealFft fft = new RealFft(Math.min(all, RealFft.lengthFor(2 * count)));
    int before = (fft.length() - count) / 2;
    double[] real = deconvolved.cross().lagsFrom(first - before, fft.length());
    fft.forward(real);
    taper(real, all / fft.length());
    double[] imaginary = real.clone();
    Packed.hilbertTransform(imaginary);
    fft.inverse(real);
    fft.inverse(imaginary);
    int step = (count + MOST_POINTS - 1) / MOST_POINTS;
    double[] highest = new double[(count + step - 1) / step];
    for (int i = 0; i < count; i++) {
      double envelope = Math.hypot(real[before + i], imaginary[before + i]);
      highest[i / step] = Math.max(highest[i / step], envelope);
    }
    double most = highest[PeakSearch.strongest(highest)];
    List<Double> levels = new ArrayList<>();
    for (double value : highest) {
      levels.add(Math.max(Response.FLOOR_DB, Decibels.ofFactor(value / most)));
    }
    return new Response(first, step, levels);
  }

  /** Tapers a packed spectrum of which each bin stands for so many of the deconvolved one. */
  private void taper(double[] packed, int each) {
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
    packed[0] *= hann(0, low, high);
    packed[1] *= hann(each * packed.length / 2, low, high);
    for (int k = 1; k < packed.length / 2; k++) {
      double factor = hann(each * k, low, high);
      packed[2 * k] *= factor;
      packed[2 * k + 1] *= factor;
    }
  }

  private static double hann(int bin, int low, int high) {
    boolean inside = bin >= low && bin <= high;
    return inside ? 0.5 - 0.5 * Math.cos(2 * Math.PI * (bin - low + 0.5) / (high - low + 1)) : 0;
  }
}
