package dev.loopgauge.signal;

/** Raised-cosine fades, so that nothing starts or ends with a step. */
public final class Fade {
  private Fade() {}

  /**
   * Fades the ends in place.
   *
   * @param samples the samples
   * @param length how many of the first and of the last fade, 0 or more, at most half of them each
   */
  public static void ends(double[] samples, int length) {
    int fade = Math.min(length, samples.length / 2);
    for (int i = 0; i < fade; i++) {
      double gain = 0.5 - 0.5 * Math.cos(Math.PI * (i + 0.5) / fade);
      samples[i] *= gain;
      samples[samples.length - 1 - i] *= gain;
    }
  }
}
