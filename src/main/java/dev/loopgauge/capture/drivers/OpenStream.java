package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;

/** A stream in which sound flows, and the thread to call it on. Used by the measuring thread. */
final class OpenStream {
  private static final int SECONDS = 5;

  /** A block of 8,192 samples at 44.1 kHz takes a fifth of a second; looks are 20 ms apart. */
  private static final int QUIET_LOOKS = 10;

  private final DriverThread thread;
  private final DriverStream stream;
  private final BlockFlow flow;
  private final SessionInfo info;
  private long seenBlocks;
  private int quietLooks;

  private OpenStream(DriverThread thread, DriverStream stream, BlockFlow flow, SessionInfo info) {
    this.thread = thread;
    this.stream = stream;
    this.flow = flow;
    this.info = info;
  }

  /** Takes over a stream that has been started, and waits until sound flows steadily. */
  static OpenStream settled(
      DriverThread thread, DriverStream stream, BlockFlow flow, StreamPlan plan)
      throws CaptureException {
    OpenStream open =
        new OpenStream(thread, stream, flow, plan.info(stream.rate(), stream.frames()));
    try {
      flow.settle();
    } catch (CaptureException e) {
      open.close();
      throw e;
    }
    return open;
  }

  SessionInfo info() {
    return info;
  }

  BlockFlow flow() {
    return flow;
  }

  /** Tells what runs what happened, and sees after the driver when no more blocks come. */
  void look(SessionRun running) throws CaptureException {
    flow.look(running, info.sampleLocked());
    long blocks = flow.blocks();
    quietLooks = blocks == seenBlocks ? quietLooks + 1 : 0;
    seenBlocks = blocks;
    if (quietLooks > QUIET_LOOKS) {
      quietLooks = 0;
      check();
    }
  }

  /** Throws when the device ended, or is another now. */
  void check() throws CaptureException {
    thread.call(
        SECONDS,
        drivers -> {
          stream.check();
          return stream;
        },
        late -> {});
  }

  /** Lets go of the channels; a driver that hangs is left behind. Never throws. */
  void close() {
    try {
      thread.call(
          SECONDS,
          drivers -> {
            stream.close();
            return stream;
          },
          late -> {});
    } catch (CaptureException e) {
      // The driver hangs or broke, and there is nothing left to lose.
    }
  }
}
