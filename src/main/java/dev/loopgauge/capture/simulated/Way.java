package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Decibels;
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

  /** What a programme becomes on it. */
  Sound over(Sound programme, int cardSamples, StreamScene scene) {
    StreamScene ofRig = new StreamScene(scene.rate(), rig.blockSize(), 0, scene.seed());
    Sound heard =
        new DelayEffect(cardSamples + rig.loop().samples()).over(programme, ofRig.apart(0));
    for (int i = 0; i < rig.heard().size(); i++) {
      heard = rig.heard().get(i).over(heard, ofRig.apart(i + 1));
    }
    return factor == 1 ? heard : new Gain(Decibels.ofFactor(factor)).over(heard, ofRig);
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
