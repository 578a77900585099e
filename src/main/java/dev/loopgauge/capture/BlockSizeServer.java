package dev.loopgauge.capture;

/**
 * A back end whose block size is one setting for all that runs on it, and can be changed while it
 * runs. A double may remember what it was set to.
 */
public interface BlockSizeServer extends AudioBackend {
  /**
   * The block size now, in samples.
   *
   * @throws CaptureException when the server doesn't answer
   */
  int blockSize() throws CaptureException;

  /**
   * Sets the block size and waits until it holds. All that runs on the server is interrupted for a
   * moment, and open sessions can no longer be used.
   *
   * @param samples 1 or more
   * @throws CaptureException when the server doesn't answer, or can't run at that size
   */
  void setBlockSize(int samples) throws CaptureException;
}
