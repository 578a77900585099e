package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.FlowLimit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;

/**
 * The blocks of an open stream, from its start to its end: handed to what runs, and watched. The
 * driver's thread writes, the measuring thread looks on.
 */
final class BlockFlow implements BlockHandler {
  /**
   * How many buffers may lie between playing and recording: one on either side, and as much again
   * in the system between. (Common practice, no source.) After as many blocks without a loss all
   * that is heard was played and recorded without one, and JACK's ports are patched: the server
   * patches them after it has started the client, each from the next block on.
   */
  static final int BUFFERS_ON_THE_WAY = 4;

  private static final String WHO = "The sound driver";

  private final AtomicReference<SessionRun> current = new AtomicReference<>();
  private final AtomicReference<Throwable> failure = new AtomicReference<>();
  private final AtomicInteger losses = new AtomicInteger();
  private final AtomicLong blocks = new AtomicLong();
  private volatile int blockSize;
  private volatile long stumbledAt;

  // Of the measuring thread.
  private int toldLosses;
  private int toldBlockSize;

  @Override
  public void blockSize(int frames) {
    blockSize = frames;
  }

  @Override
  public void block(float[][] sends, float[][] returns, int frames, int missed) {
    if (missed != 0) {
      stumbledAt = blocks.get();
    }
    SessionRun running = current.get();
    if (running != null) {
      running.block(sends, returns, frames, missed);
    }
    blocks.incrementAndGet();
  }

  @Override
  public void lost() {
    stumbledAt = blocks.get();
    losses.incrementAndGet();
  }

  @Override
  public void failed(Throwable thrown) {
    failure.compareAndSet(null, thrown);
  }

  /**
   * Waits until sound flows steadily; to be called once the stream has started.
   *
   * @throws CaptureException with {@code TIMED_OUT} when it doesn't
   */
  void settle() throws CaptureException {
    FlowLimit limit = FlowLimit.ofTake(WHO, 0);
    stumbledAt = blocks.get();
    while (blocks.get() - stumbledAt <= BUFFERS_ON_THE_WAY) {
      FlowLimit.pause();
      checkFailure();
      limit.check(blocks.get());
    }
    toldLosses = losses.get();
    toldBlockSize = blockSize;
  }

  /** How many blocks there were. */
  long blocks() {
    return blocks.get();
  }

  /** How many frames the block at hand has. */
  int blockSize() {
    return blockSize;
  }

  /** Whether sound was lost since that was last told. */
  boolean hasLost() {
    return losses.get() != toldLosses;
  }

  /** Forgets what was lost so far. */
  void forgetLosses() {
    toldLosses = losses.get();
  }

  /** What runs from the next block on. */
  void run(SessionRun next) {
    current.set(next);
  }

  /** Nothing runs from the next block on: the sends are silent. */
  void rest() {
    current.set(null);
  }

  /**
   * Tells what runs what happened since the last look.
   *
   * @param fixed whether all blocks of this driver are equally long
   * @throws CaptureException when a block could not be played or recorded
   */
  void look(SessionRun running, boolean fixed) throws CaptureException {
    checkFailure();
    if (hasLost()) {
      forgetLosses();
      running.lost();
    }
    int now = blockSize;
    if (fixed && now != toldBlockSize) {
      running.blockSizeChanged(toldBlockSize, now);
      toldBlockSize = now;
    }
  }

  private void checkFailure() throws CaptureException {
    Throwable thrown = failure.get();
    if (thrown != null) {
      throw new CaptureException(
          Kind.GONE,
          "Playing or recording a block failed: " + thrown + ".",
          "Run the command again: it opens the channels anew.");
    }
  }
}
