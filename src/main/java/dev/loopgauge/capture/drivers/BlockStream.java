package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.BlockRing;
import dev.loopgauge.capture.LostFrames;

/** A stream while it runs: the driver fills a ring, and the measuring thread empties it. */
final class BlockStream implements SessionRun {
  private final BlockRing ring;
  private long frame;
  private boolean started;
  private boolean lostSound;

  BlockStream(int returns, int blockSize, int hertz) {
    ring = BlockRing.ofTwoSeconds(returns, blockSize, hertz);
  }

  @Override
  public void block(float[][] sends, float[][] returns, int frames, int missed) {
    frame += started ? missed : 0;
    started = true;
    float[][] free = ring.free();
    if (free != null) {
      for (int i = 0; i < returns.length; i++) {
        System.arraycopy(returns[i], 0, free[i], 0, frames);
      }
      ring.put(frame, frames);
    }
    frame += frames;
  }

  @Override
  public void lost() {
    lostSound = true;
  }

  @Override
  public void blockSizeChanged(int from, int to) {
    // The session ends the stream.
  }

  @Override
  public long progress() {
    return ring.next();
  }

  /**
   * Gives the listener what is there, and tells what the driver lost.
   *
   * @return whether it wants more
   */
  boolean empty(BlockListener listener) {
    boolean more = ring.empty(listener);
    if (lostSound) {
      listener.lost(new LostFrames(ring.next(), 0, "The driver lost sound (xrun)."));
    }
    lostSound = false;
    return more;
  }
}
