package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Limits;

/**
 * The host misses a block: one block of silence, and from then on the path is one block later.
 *
 * @param seconds when, counted from the start of the take, 0 to 600 s
 */
record LostBlock(double seconds) implements SoundFault {
  LostBlock {
    Limits.check("a lost block", seconds, 0, 600, "s into the take");
  }

  @Override
  public double[] on(double[] sound, Scene scene) {
    double[] later = new double[sound.length];
    int from = scene.placeOf(seconds, sound.length);
    int to = Math.min(from + scene.blockSize(), sound.length);
    System.arraycopy(sound, 0, later, 0, from);
    System.arraycopy(sound, from, later, to, sound.length - to);
    return later;
  }

  @Override
  public int reach(StreamScene scene) {
    return scene.blockSize();
  }
}
