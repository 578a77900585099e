package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.spectrum.RealFft;

/** What a path is taken to do to the sound, so that it can be taken off a return. */
public interface PathModel {
  /** The delay that {@link #spectrum} is relative to, in samples. */
  double delay();

  /** How many free parameters were fitted. */
  int taps();

  /** The packed spectrum of what it does, with the delay taken out. */
  double[] spectrum(RealFft fft);
}
