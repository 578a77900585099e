package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.estimate.spectrum.Spectra;
import java.util.Arrays;
import java.util.List;

/**
 * One side of a reading as the filter that the other side alone is fitted with makes it: what the
 * two have in common besides that filter.
 *
 * @param due what the filter makes of this side's reference
 * @param heard its return
 */
@SuppressWarnings("ArrayRecordComponent") // read once within one test, never compared
record OtherSide(double[] due, double[] heard) {
  /** Arithmetic of 53 bits tells no difference closer to 1. */
  private static final double MOST_ALIKE = 1 - 0x1p-52;

  /**
   * A side by the filter of the other.
   *
   * @param fitted the side that the filter is fitted to
   * @param reach how long the filter may be, in samples
   */
  static OtherSide of(Reading fitted, Reading other, int reach) {
    Spectra spectra = Spectra.of(List.of(fitted), (double) reach / fitted.rate().hertz());
    Fit fit = Fit.of(spectra, List.of(spectra.strongest()));
    Explained explained = Explained.of(spectra, fit, other);
    return new OtherSide(explained.found(), explained.ret());
  }

  /** The squared correlation of what was heard with what was due so much earlier. */
  double squaredCorrelation(int later) {
    double both = 0;
    double ofDue = Double.MIN_NORMAL;
    double ofHeard = Double.MIN_NORMAL;
    for (int i = Math.max(0, later); i < heard.length + Math.min(0, later); i++) {
      both += due[i - later] * heard[i];
      ofDue += due[i - later] * due[i - later];
      ofHeard += heard[i] * heard[i];
    }
    return Math.min(MOST_ALIKE, both * both / ofDue / ofHeard);
  }

  /** What the sound that was due is multiplied by. */
  double gain() {
    double both = 0;
    double ofDue = Double.MIN_NORMAL;
    for (int i = 0; i < heard.length; i++) {
      both += due[i] * heard[i];
      ofDue += due[i] * due[i];
    }
    return both / ofDue;
  }

  /** The share of what was heard that is left of it without what was due. */
  double residual() {
    double residual = 0;
    double all = Double.MIN_NORMAL;
    for (int i = 0; i < heard.length; i++) {
      residual += (heard[i] - due[i]) * (heard[i] - due[i]);
      all += heard[i] * heard[i];
    }
    return residual / all;
  }

  /**
   * How many independent values were heard at least: two in each bin, as many bins as would carry
   * the sound if all carried alike (the ratio of the squared sum of powers to the sum of their
   * squares, which noise halves).
   */
  double values() {
    RealFft fft = new RealFft(RealFft.lengthFor(heard.length));
    double[] spectrum = Arrays.copyOf(heard, fft.length());
    fft.forward(spectrum);
    double sum = 0;
    double squares = Double.MIN_NORMAL;
    for (int k = 1; k < fft.length() / 2; k++) {
      double power = Packed.power(spectrum, k);
      sum += power;
      squares += power * power;
    }
    return 2 * sum * sum / squares * heard.length / fft.length();
  }
}
