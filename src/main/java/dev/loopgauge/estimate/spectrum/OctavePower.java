package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Samples;

/** How loud some sound is once it has passed a path whose level is known by octave. */
public final class OctavePower {
  private OctavePower() {}

  /**
   * The mean power of what comes back.
   *
   * @param sent what is played
   * @param centresHz the octaves that the path was heard in
   * @param levelsDb its level in each
   * @return in squares of full scale, the other octaves left out
   */
  public static double passed(Samples sent, double[] centresHz, double[] levelsDb) {
    RealFft fft = new RealFft(RealFft.lengthFor(sent.length()));
    double[] spectrum = new double[fft.length()];
    sent.copyTo(0, spectrum, 0, sent.length());
    fft.forward(spectrum);
    double[] powers = Packed.powers(spectrum);
    double binHz = (double) sent.rate().hertz() / fft.length();
    double sum = 0;
    for (int i = 0; i < centresHz.length; i++) {
      int from = (int) Math.ceil(centresHz[i] / Math.sqrt(2) / binHz);
      int to = (int) Math.min(powers.length - 1.0, centresHz[i] * Math.sqrt(2) / binHz);
      double gain = Decibels.toFactor(levelsDb[i]);
      for (int k = from; k < to; k++) {
        sum += gain * gain * powers[k];
      }
    }
    // Parseval's theorem: each bin stands for itself and its mirror image.
    return 2 * sum / fft.length() / sent.length();
  }
}
