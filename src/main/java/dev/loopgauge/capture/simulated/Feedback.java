package dev.loopgauge.capture.simulated;

import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.Decibels;

/**
 * A microphone hears the loudspeaker it feeds: whenever nothing plays, a howl at {@value #HOWL_HZ}
 * Hz builds up from {@value #START_DBFS} dBFS by {@value #GROWTH_DB} dB a second.
 */
record Feedback() implements SoundFault {
  private static final double HOWL_HZ = 630;
  private static final double START_DBFS = -60;
  private static final double GROWTH_DB = 80;

  @Override
  public double[] on(double[] sound, Scene scene) {
    double[] howling = sound.clone();
    for (Take.Segment segment : scene.listening()) {
      int to = Math.min(segment.to(), howling.length);
      for (int i = segment.from(); i < to; i++) {
        howling[i] += howl((double) (i - segment.from()) / scene.rate().hertz());
      }
    }
    return howling;
  }

  private static double howl(double seconds) {
    double peak = Decibels.toFactor(Math.min(0, START_DBFS + GROWTH_DB * seconds));
    return peak * Math.sin(2 * Math.PI * HOWL_HZ * seconds);
  }
}
