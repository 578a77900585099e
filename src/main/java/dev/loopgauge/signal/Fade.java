package dev.loopgauge.signal;

/** Raised-cosine fades, so that nothing played starts or ends with a step. */
final class Fade {
  private Fade() {}

  /** Fades the first and the last {@code length} samples in place, at most half of them each. */
  static void ends(double[] samples, int length) {
    int fade = Math.min(length, samples.length / 2);
    for (int i = 0; i < fade; i++) {
      double gain = 0.5 - 0.5 * Math.cos(Math.PI * (i + 0.5) / fade);
      samples[i] *= gain;
      samples[samples.length - 1 - i] *= gain;
    }
  }
}
