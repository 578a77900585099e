package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.BlockPlan;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.estimate.spectrum.Subtraction;

/**
 * A return beside what a fit makes of its reference, for each sample of the reference.
 *
 * @param ret the return, moved earlier by the delay's whole samples
 * @param found what the fit explains of it
 */
@SuppressWarnings("ArrayRecordComponent") // read once within one test, never compared
record Explained(double[] ret, double[] found) {
  /** Nothing, of nothing. */
  static final Explained NOTHING = new Explained(new double[0], new double[0]);

  /** What a fit of some readings explains of one of them. */
  static Explained of(Spectra spectra, Fit fit, Reading reading) {
    int length = reading.reference().length();
    BlockPlan plan = ResidualTests.plan(spectra, fit.arrivals(), length);
    RealFft fft = spectra.transforms().ofLength(plan.transform());
    int wholeDelay = wholeDelay(fit);
    double[] filter = fit.pathResponse().spectrum(fft);
    Packed.fractionalDelay(filter, wholeDelay - fit.pathResponse().delay());
    Explained all = new Explained(new double[length], new double[length]);
    try (Subtraction source = new Subtraction(plan, fft, wholeDelay, filter)) {
      for (int block = 0; block * plan.advance() < length; block++) {
        source.run(reading, block);
        source.copyReturn(0, all.ret, source.start(), source.length());
        source.copyFound(0, all.found, source.start(), source.length());
      }
    }
    return all;
  }

  /** The whole samples of a fit's delay. */
  static int wholeDelay(Fit fit) {
    return (int) Math.rint(fit.pathResponse().delay());
  }

  /** The return of a reading, moved earlier by a fit's whole samples of delay. */
  static double[] aligned(Fit fit, Reading reading) {
    double[] ret = new double[reading.reference().length()];
    reading.ret().copyTo(wholeDelay(fit), ret, 0, ret.length);
    return ret;
  }
}
