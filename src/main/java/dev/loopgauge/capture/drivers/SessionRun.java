package dev.loopgauge.capture.drivers;

/** What runs on a session: a take or a stream. */
interface SessionRun {
  /** A block, as {@link BlockHandler#block}; on the driver's thread. */
  void block(float[][] sends, float[][] returns, int frames, int missed);

  /** The driver lost sound, nobody knows how much; on the measuring thread. */
  void lost();

  /** The driver's blocks have another length now; on the measuring thread. */
  void blockSizeChanged(int from, int to);

  /** A count that grows as long as sound flows. */
  long progress();
}
