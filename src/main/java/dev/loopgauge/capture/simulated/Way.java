package dev.loopgauge.capture.simulated;

import java.util.List;

/**
 * A way from a send to a return.
 *
 * @param send the send that feeds it
 * @param rig what stands between
 * @param factor how loud it is heard, 1 for as loud as it comes
 */
record Way(int send, Rig rig, double factor) {
  /** The sound at its end; as long as before. */
  double[] on(double[] sound, int cardSamples, Scene scene) {
    double[] heard = new DelayEffect(cardSamples + rig.loop().samples()).on(sound, scene);
    for (SoundFault fault : rig.heard()) {
      heard = fault.on(heard, scene);
    }
    if (factor != 1) {
      for (int i = 0; i < heard.length; i++) {
        heard[i] *= factor;
      }
    }
    return heard;
  }

  /** The sound of all these ways together. */
  static double[] sum(List<double[]> sounds, int frames) {
    double[] sum = new double[frames];
    for (double[] sound : sounds) {
      for (int i = 0; i < frames; i++) {
        sum[i] += sound[i];
      }
    }
    return sum;
  }
}
