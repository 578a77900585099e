package dev.loopgauge.capture;

/** Gets what a session records, block by block, for as long as it wants more. */
public interface BlockListener {
  /**
   * The next block.
   *
   * @param frame the number of its first frame, from 0 where the stream began; lost frames count
   * @param returns one array for each return, filled from its start; used again for a later block
   * @param length how many frames it has, at least 1
   * @return whether to go on
   */
  boolean block(long frame, float[][] returns, int length);

  /** Frames were lost or came twice; told before the block that comes after them. */
  void lost(LostFrames lost);
}
