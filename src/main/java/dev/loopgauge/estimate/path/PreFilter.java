package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.PassBand;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.estimate.spectrum.ShortBlocks;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Fade;
import dev.loopgauge.signal.Signal;
import java.util.Arrays;
import java.util.List;

/**
 * References as a path of few frequencies passes them, such as that to a subwoofer. Against the
 * whole of a reference, noise in all that the path holds back counts as much as the arrival, and
 * moves its broad peak; this is the filter matched to what comes back (Knapp and Carter 1976, as
 * for {@link CrossSpectrum}), without its phase, so that the delay stays in.
 */
public final class PreFilter {
  /** A reference that is cut out of sound fades in and out for so long, as a share of a block. */
  private static final double FADE = 0.25;

  /** Below this power a fitted path is as likely noise, which would shake the peak. */
  private static final double FAINTEST = 1e-3;

  private final double[] gains;
  private final int fade;

  private PreFilter(double[] gains, int fade) {
    this.gains = gains;
    this.fade = fade;
  }

  /** The readings behind a fit, with only that of their references which its path passes. */
  public static List<Reading> by(Fit fit, Spectra spectra) {
    double[] gains = gains(fit.passed(), spectra.auto().magnitudes());
    int fade = (int) (FADE * ShortBlocks.lengthAt(spectra.rate()));
    PreFilter passed = new PreFilter(gains, fade);
    return spectra.readings().stream().map(passed::of).toList();
  }

  /**
   * The path's magnitude, 1 on average over what it makes of the reference, and nothing where it
   * passes next to nothing.
   */
  private static double[] gains(double[] powers, double[] reference) {
    double[] gains = PassBand.of(powers);
    double sum = 0;
    double squares = 0;
    for (int k = 0; k < gains.length; k++) {
      sum += gains[k] * reference[k];
      squares += gains[k] * gains[k] * reference[k];
    }
    for (int k = 0; k < gains.length; k++) {
      double passed = gains[k] * sum / squares;
      gains[k] = passed < FAINTEST ? 0 : Math.min(1, Math.sqrt(passed));
    }
    return gains;
  }

  private Reading of(Reading reading) {
    int length = reading.reference().length();
    RealFft fft = new RealFft(RealFft.lengthFor(length + 2 * fade));
    double[] sent = new double[length];
    reading.reference().copyTo(0, sent, 0, length);
    if (reading.goesOn()) {
      Fade.ends(sent, fade);
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
