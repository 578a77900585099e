package dev.loopgauge.capture.drivers;

/**
 * What a driver calls for each block, on a thread of its own with no time to spare: nothing in it
 * allocates, waits or throws.
 */
interface BlockHandler {
  /** The block at hand has that many frames; more than were agreed are cut off. */
  void blockSize(int frames);

  /**
   * Fills what is to be played next, and takes what was just recorded.
   *
   * @param sends one array for each send of the plan, silent
   * @param returns one array for each return of the plan
   * @param frames how many frames each array holds
   * @param missed how many frames the driver left out since the last block; negative where that
   *     many came twice
   */
  void block(float[][] sends, float[][] returns, int frames, int missed);

  /** The driver lost sound; nobody knows how much. On any thread. */
  void lost();

  /** Playing or recording a block failed. */
  void failed(Throwable failure);
}
