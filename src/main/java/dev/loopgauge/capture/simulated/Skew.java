package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Limits;

/**
 * The return's channel of the card is later than its others, as where one passes converters and
 * another doesn't.
 *
 * @param samples how much later, {@value #MOST} either way; negative where it comes first
 */
record Skew(double samples) implements SoundFault {
  private static final int MOST = 100;

  Skew {
    Limits.check("skew", samples, -MOST, MOST, "samples");
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    return new DelayEffect(samples).on(sound, scene);
  }

  @Override
  public int reach(StreamScene scene) {
    return MOST + Interpolation.REACH;
  }
}
