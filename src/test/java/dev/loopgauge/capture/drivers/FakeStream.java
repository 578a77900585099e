package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.signal.SampleRate;
import java.util.Arrays;

/** A stream of {@link FakeDrivers}: a thread that moves blocks, faster than a sound card would. */
final class FakeStream implements DriverStream {
  private static final int HELD = 1 << 16;
  private static final int BLOCKS_A_REST = 32;

  private final float[][] sends;
  private final float[][] returns;
  private final float[][] line;
  private final BlockHandler handler;
  private final int delay;
  private final Thread thread = new Thread(this::flow, "fake driver");
  private volatile boolean running;
  private volatile boolean stalled;
  private volatile boolean gone;
  private volatile int missed;
  private volatile int blockSize = FakeDrivers.BLOCK;
  private long frame;

  FakeStream(StreamPlan plan, BlockHandler handler, int delay) {
    this.sends = new float[plan.sends().count()][FakeDrivers.BLOCK];
    this.returns = new float[plan.returns().count()][FakeDrivers.BLOCK];
    this.line = new float[Math.max(1, plan.sends().count())][HELD];
    this.handler = handler;
    this.delay = delay;
    thread.setDaemon(true);
  }

  /** The next block comes after that many frames that don't come; negative: it comes again. */
  void miss(int frames) {
    missed = frames;
  }

  /** The driver tells of a loss. */
  void loseSound() {
    handler.lost();
  }

  /** No more blocks come, and nothing says why. */
  void stall() {
    stalled = true;
  }

  /** No more blocks come, and the driver says so when asked. */
  void goAway() {
    gone = true;
    stalled = true;
  }

  /** Blocks have another length from now on. */
  void changeBlockSize(int frames) {
    blockSize = frames;
  }

  boolean isClosed() {
    return !running;
  }

  @Override
  public SampleRate rate() {
    return FakeDrivers.RATE;
  }

  @Override
  public int frames() {
    return FakeDrivers.BLOCK;
  }

  @Override
  public void start() {
    running = true;
    thread.start();
  }

  private void flow() {
    for (int blocks = 1; running; blocks++) {
      if (!stalled) {
        move();
      }
      if (stalled || blocks % BLOCKS_A_REST == 0) {
        rest();
      }
    }
  }

  /** What is played comes back later; what is left out is left out of both. */
  private void move() {
    int left = missed;
    missed = 0;
    for (int i = 0; i < returns.length; i++) {
      for (int at = 0; at < FakeDrivers.BLOCK; at++) {
        returns[i][at] = line[i % line.length][place(frame + at - delay)];
      }
    }
    for (float[] send : sends) {
      Arrays.fill(send, 0);
    }
    handler.blockSize(blockSize);
    handler.block(sends, returns, FakeDrivers.BLOCK, left);
    for (int i = 0; i < sends.length; i++) {
      for (int at = 0; at < FakeDrivers.BLOCK; at++) {
        line[i][place(frame + at)] = sends[i][at];
      }
    }
    frame += FakeDrivers.BLOCK;
  }

  private static int place(long at) {
    return (int) Math.floorMod(at, (long) HELD);
  }

  private static void rest() {
    try {
      Thread.sleep(1);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void check() throws CaptureException {
    if (gone) {
      throw new CaptureException(
          CaptureException.Kind.GONE, "The card went away.", "Plug it in again.");
    }
  }

  @Override
  public void close() {
    running = false;
  }
}
