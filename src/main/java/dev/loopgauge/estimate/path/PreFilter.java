package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.PassBand;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Fade;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.stats.Odds;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * References as a path of few frequencies passes them, such as that to a subwoofer. Against the
 * whole of a reference, noise in all that the path holds back counts as much as the arrival, and
 * moves its broad peak; this is the filter matched to what comes back (Knapp and Carter 1976, as
 * for {@link CrossSpectrum}), without its phase, so that the delay stays in.
 */
public final class PreFilter {
  private final Spectra spectra;
  private final double[] gains;
  private final int reach;

  /** A filter as the path of a fit passes sound. */
  public PreFilter(Spectra spectra, Fit fit) {
    this.spectra = spectra;
    double[] reference = spectra.auto().magnitudes();
    this.gains = gains(fit, reference);
    this.reach = Math.max(spectra.reach(), spread(gains, reference));
  }

  /** The readings, with only that of their references which the path passes. */
  public List<Reading> readings() {
    return spectra.readings().stream().map(this::of).toList();
  }

  /**
   * How far the path spreads sound either way, in samples, no less than any path may; the largest
   * integer where it passes nothing.
   */
  public int reach() {
    return reach;
  }

  /**
   * The reciprocal of a bandwidth: that of an even band with as much power and as much of its
   * square (as in M. S. Bartlett's count of independent values, from memory).
   */
  private static int spread(double[] gains, double[] reference) {
    double sum = 0;
    double squares = 0;
    for (int k = 0; k < gains.length; k++) {
      double power = gains[k] * gains[k] * reference[k];
      sum += power;
      squares += power * power;
    }
    return sum == 0
        ? Integer.MAX_VALUE
        : (int) Math.ceil(2 * (gains.length - 1) * squares / (sum * sum));
  }

  /**
   * The path's magnitude, at most 1, which is where half of what comes back lies; nothing where
   * what was fitted may be noise, the power of which is as large as e^x times its mean once in e^x.
   */
  private static double[] gains(Fit fit, double[] reference) {
    double[] gains = PassBand.of(fit.passed());
    int perBin = gains.length / fit.residual().bins();
    for (int k = 0; k < gains.length; k++) {
      int bin = Math.min(k / perBin, fit.residual().bins() - 1);
      gains[k] = gains[k] > Odds.BEYOND_DOUBT * fit.residual().filterNoise(bin) ? gains[k] : 0;
    }
    double usual = usual(gains, reference);
    for (int k = 0; k < gains.length; k++) {
      gains[k] = Math.min(1, Math.sqrt(gains[k] / usual));
    }
    return gains;
  }

  /**
   * The median of what is passed, each bin counting for what it passes of the reference: where that
   * holds next to nothing a fitted filter may come out as anything, which a mean would follow.
   */
  private static double usual(double[] passed, double[] reference) {
    Integer[] order = new Integer[passed.length];
    double left = 0;
    for (int k = 0; k < order.length; k++) {
      order[k] = k;
      left += passed[k] * reference[k] / 2;
    }
    Arrays.sort(order, Comparator.comparingDouble(k -> passed[k]));
    int at = 0;
    while (at < order.length - 1 && left > passed[order[at]] * reference[order[at]]) {
      left -= passed[order[at]] * reference[order[at]];
      at++;
    }
    return passed[order[at]];
  }

  private Reading of(Reading reading) {
    int length = reading.reference().length();
    RealFft fft = new RealFft(RealFft.lengthFor(length + 2 * reach));
    double[] sent = new double[length];
    reading.reference().copyTo(0, sent, 0, length);
    if (reading.goesOn()) {
      Fade.ends(sent, reach);
    }
    double[] samples = Arrays.copyOf(sent, fft.length());
    fft.forward(samples);
    samples[0] = 0;
    samples[1] = 0;
    for (int k = 1; k < samples.length / 2; k++) {
      double gain = gains[(int) ((long) k * 2 * (gains.length - 1) / samples.length)];
      samples[2 * k] *= gain;
      samples[2 * k + 1] *= gain;
    }
    fft.inverse(samples);
    Signal passed = Signal.of(reading.rate(), samples).slice(0, length);
    return new Reading(passed, reading.ret(), reading.start());
  }
}
