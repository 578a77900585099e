package dev.loopgauge.capture.simulated;

/** The card's converter at a return: what lies beyond full scale is cut off there. */
record Converter() implements SoundEffect {
  @Override
  public double[] on(double[] sound, Scene scene) {
    double[] cut = new double[sound.length];
    for (int i = 0; i < cut.length; i++) {
      cut[i] = Math.max(-1, Math.min(1, sound[i]));
    }
    return cut;
  }
}
