package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Limits;
import dev.loopgauge.signal.filter.Filter;
import dev.loopgauge.signal.filter.HighPass;
import dev.loopgauge.signal.filter.LowPass;

/**
 * The rig passes only a band, as an intercom or a small loudspeaker does. The filter runs forwards
 * and backwards, so that it adds no delay of its own and the rig stays as late as its chain says;
 * the edges are 6 dB down and fall by 24 dB an octave.
 *
 * @param lowHz the lower edge, 1 to 100000 Hz
 * @param highHz the upper edge, above the lower one; out of the way at half the rate and beyond
 */
record BandLimit(double lowHz, double highHz) implements SoundFault {
  /** After this, what a filter at 20 Hz or above still rings of a sound is below 1e-5 of it. */
  private static final double SETTLED_SECONDS = 0.5;

  private static final int ORDER = 2;

  BandLimit {
    Limits.check("the band's lower edge", lowHz, 1, 100_000, "Hz");
    Limits.check("the band's upper edge", highHz, 1, 400_000, "Hz");
    if (lowHz >= highHz) {
      throw new IllegalArgumentException(
          "a band must rise, not run from " + lowHz + " to " + highHz + " Hz");
    }
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    double[] band = sound;
    if (lowHz < scene.rate().nyquistHz()) {
      band = bothWays(new HighPass(lowHz, ORDER).at(scene.rate()), band);
    }
    if (highHz < scene.rate().nyquistHz()) {
      band = bothWays(new LowPass(highHz, ORDER).at(scene.rate()), band);
    }
    return band;
  }

  @Override
  public int reach(StreamScene scene) {
    return scene.rate().samplesIn(SETTLED_SECONDS);
  }

  /** Filters forwards, then backwards: twice the slope, no delay. */
  private static double[] bothWays(Filter filter, double[] sound) {
    return reversed(filter.on(reversed(filter.on(sound))));
  }

  private static double[] reversed(double[] sound) {
    double[] back = new double[sound.length];
    for (int i = 0; i < back.length; i++) {
      back[i] = sound[sound.length - 1 - i];
    }
    return back;
  }
}
