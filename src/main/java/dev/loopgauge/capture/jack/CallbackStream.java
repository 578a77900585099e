package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.BlockRing;
import dev.loopgauge.capture.LostFrames;

/**
 * A stream while it runs: the server's callback fills a ring, each block under the number that the
 * server's clock gives its first frame, and the measuring thread empties it.
 */
final class CallbackStream implements Running {
  private final BlockRing ring;
  private boolean started;
  private long lastTime;
  private long frame;
  private boolean lostTime;

  CallbackStream(int returns, int blockSize, int hertz) {
    ring = BlockRing.ofTwoSeconds(returns, blockSize, hertz);
  }

  @Override
  public void play(long time, int block, ServerPort[] ports, int length) {
    // The sends are silent.
  }

  @Override
  public void record(long time, int block, ServerPort[] ports, int length) {
    count(time);
    float[][] free = ring.free();
    if (free != null) {
      for (int i = 0; i < ports.length; i++) {
        ports[i].block(length).get(0, free[i], 0, length);
      }
      ring.put(frame, length);
    }
  }

  /** Takes the server's clock on from its 32 bits, backwards too. */
  private void count(long time) {
    frame += started ? (int) (time - lastTime) : 0;
    started = true;
    lastTime = time;
  }

  @Override
  public void xrun() {
    lostTime = true;
  }

  @Override
  public void blockSizeChanged(int from, int to) {
    // The watch ends the stream.
  }

  /**
   * Gives the listener what is there. Time that the server lost shows in the numbers of the frames
   * where frames are missing; where none are, the device lost them, and nobody knows how many.
   *
   * @return whether it wants more
   */
  boolean empty(BlockListener listener) {
    Counted counted = new Counted(listener);
    boolean more = ring.empty(counted);
    if (lostTime && !counted.lost) {
      listener.lost(new LostFrames(ring.next(), 0, "The audio server lost time (xrun)."));
    }
    lostTime = false;
    return more;
  }

  /** A count that grows as long as sound flows. */
  long progress() {
    return ring.next();
  }

  /** Sees whether a loss was told. */
  private static final class Counted implements BlockListener {
    private final BlockListener listener;
    private boolean lost;

    Counted(BlockListener listener) {
      this.listener = listener;
    }

    @Override
    public boolean block(long frame, float[][] returns, int length) {
      return listener.block(frame, returns, length);
    }

    @Override
    public void lost(LostFrames frames) {
      lost = true;
      listener.lost(frames);
    }
  }
}
