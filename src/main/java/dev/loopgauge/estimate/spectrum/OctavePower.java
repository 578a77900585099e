package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;

/** How loud some sound is once it has passed a path whose level is known by octave. */
public final class OctavePower {
  private final double[] fade;
  private final double[] shares;
  private final RealFft fft;

  /**
   * A path, and how much sound is taken at a time.
   *
   * @param length how many samples, faded in and out so that no octave leaks into others
   * @param centresHz the octaves that the path was heard in; the others are left out
   * @param levelsDb its level in each
   */
  public OctavePower(SampleRate rate, int length, double[] centresHz, double[] levelsDb) {
    fft = new RealFft(RealFft.lengthFor(length));
    fade = new double[length];
    double kept = 0;
    for (int i = 0; i < length; i++) {
      fade[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / length);
      kept += fade[i] * fade[i];
    }
    shares = new double[fft.length() / 2 + 1];
    double binHz = (double) rate.hertz() / fft.length();
    for (int i = 0; i < centresHz.length; i++) {
      int from = (int) Math.ceil(centresHz[i] / Math.sqrt(2) / binHz);
      int to = (int) Math.min(shares.length - 1.0, Math.ceil(centresHz[i] * Math.sqrt(2) / binHz));
      double gain = Decibels.toFactor(levelsDb[i]);
      for (int k = from; k < to; k++) {
        // Parseval's theorem: each bin stands for itself and its mirror image.
        shares[k] = 2 * gain * gain / fft.length() / kept;
      }
    }
  }

  /**
   * The mean power of what comes back.
   *
   * @param sent what is played
   * @param from the first sample of it to take
   * @return in squares of full scale
   */
  public double of(Samples sent, int from) {
    double[] spectrum = new double[fft.length()];
    sent.copyTo(from, spectrum, 0, fade.length);
    for (int i = 0; i < fade.length; i++) {
      spectrum[i] *= fade[i];
    }
    fft.forward(spectrum);
    double[] powers = Packed.powers(spectrum);
    double sum = 0;
    for (int k = 0; k < powers.length; k++) {
      sum += shares[k] * powers[k];
    }
    return sum;
  }
}
