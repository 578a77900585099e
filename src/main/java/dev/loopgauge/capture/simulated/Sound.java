package dev.loopgauge.capture.simulated;

/** A sound without end, to be read anywhere; the same stretch always reads the same. */
interface Sound {
  /**
   * A stretch of it.
   *
   * @param from the first frame, counted from where the stream began; before that it is silent
   * @param length how many frames
   */
  double[] read(long from, int length);
}
