package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.CaptureException;
import java.util.concurrent.atomic.AtomicReference;

/**
 * What the measuring thread sees of the server while takes run: whether it is still there, still
 * the one that was opened, and whether it lost time.
 */
final class ServerWatch {
  private static final String AGAIN = "Run the command again: it opens the channels anew.";

  private final ServerClient client;
  private final int openedBlockSize;
  private final int openedRateHz;
  private final AtomicReference<Exception> callbackFailure = new AtomicReference<>();
  private volatile int blockSize;
  private int toldBlockSize;

  ServerWatch(ServerClient client, int blockSize, int rateHz) {
    this.client = client;
    this.openedBlockSize = blockSize;
    this.openedRateHz = rateHz;
    this.blockSize = blockSize;
    this.toldBlockSize = blockSize;
  }

  /** The size of the block at hand, told by a callback. */
  void blockSize(int samples) {
    blockSize = samples;
  }

  /** A callback broke: it must not throw into the server, so it says so here. */
  void callbackFailed(Exception failure) {
    callbackFailure.compareAndSet(null, failure);
  }

  /** Notes what happened since the last look, and throws when it can't go on. */
  void check(Running running) throws CaptureException {
    if (client.lostTime()) {
      running.xrun();
    }
    int now = blockSize;
    if (now != toldBlockSize) {
      running.blockSizeChanged(toldBlockSize, now);
      toldBlockSize = now;
    }
    checkThere();
  }

  /** Throws when the server can no longer be used. */
  void checkThere() throws CaptureException {
    if (client.isGone()) {
      throw gone("The audio server ended.", "Start the audio server, and measure again.");
    }
    int rateHz = client.rateHz();
    if (rateHz != openedRateHz) {
      throw gone(
          "The audio server's rate changed from %d to %d Hz.".formatted(openedRateHz, rateHz),
          AGAIN);
    }
    Exception failure = callbackFailure.get();
    if (failure != null) {
      throw gone("Playing or recording a block failed: " + failure + ".", AGAIN);
    }
  }

  /** Throws when the server is no longer the one that was opened; a take may start otherwise. */
  void checkUnchanged() throws CaptureException {
    checkThere();
    checkBlockSize();
    // Time lost before the take is no business of the take.
    client.lostTime();
  }

  /** Throws when the server's block size is no longer the one that was opened. */
  void checkBlockSize() throws CaptureException {
    if (blockSize != openedBlockSize) {
      throw gone(
          "The audio server's block size changed from %d to %d samples since the channels were opened."
              .formatted(openedBlockSize, blockSize),
          AGAIN);
    }
  }

  private static CaptureException gone(String text, String hint) {
    return new CaptureException(CaptureException.Kind.GONE, text, hint);
  }
}
