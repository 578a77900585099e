package dev.loopgauge.capture.jack;

/**
 * What runs on a session: a take or a stream. The first two are called on the server's threads,
 * with no time to spare: nothing in them allocates, waits or throws.
 */
interface Running {
  /**
   * Plays a block.
   *
   * @param time the server's frame clock at the start of the block, 32 bits unsigned
   * @param block samples in the block
   * @param ports silent, to be filled up to {@code length}
   */
  void play(long time, int block, ServerPort[] ports, int length);

  /** Records a block; as {@link #play}. */
  void record(long time, int block, ServerPort[] ports, int length);

  /** The server lost time since the last look. */
  void xrun();

  /** The server has another block size now. */
  void blockSizeChanged(int from, int to);
}
