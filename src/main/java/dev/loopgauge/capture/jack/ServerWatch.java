package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.CaptureException;
import java.util.concurrent.atomic.AtomicReference;
import org.jaudiolibs.jnajack.JackClient;
import org.jaudiolibs.jnajack.JackException;

/**
 * Hears what the server says about itself, on the server's threads, and remembers it for the
 * measuring thread.
 */
final class ServerWatch {
  private static final String AGAIN = "Run the command again: it opens the channels anew.";

  private final AtomicReference<RunningTake> current;
  private final int openedBlockSize;
  private final int openedRateHz;
  private volatile int blockSize;
  private volatile int rateHz;
  private volatile boolean gone;
  private final AtomicReference<Exception> callbackFailure = new AtomicReference<>();

  ServerWatch(AtomicReference<RunningTake> current, int blockSize, int rateHz) {
    this.current = current;
    this.openedBlockSize = blockSize;
    this.openedRateHz = rateHz;
    this.blockSize = blockSize;
    this.rateHz = rateHz;
  }

  /** Listens to all that a client is told. To be called before the client is activated. */
  void listenTo(JackClient client) throws JackException {
    client.onShutdown(this::ended);
    client.setXrunCallback(late -> xrun());
    client.setBuffersizeCallback((changed, samples) -> changeBlockSize(samples));
    client.setSampleRateCallback((changed, hz) -> rateHz = hz);
  }

  /** The server ended, or threw the client out. */
  void ended(JackClient client) {
    gone = true;
  }

  private void xrun() {
    RunningTake take = current.get();
    if (take != null) {
      take.xrun();
    }
  }

  private void changeBlockSize(int samples) {
    int before = blockSize;
    blockSize = samples;
    RunningTake take = current.get();
    if (take != null && samples != before) {
      take.blockSizeChanged(before, samples);
    }
  }

  /** A callback broke: it must not throw into the server, so it says so here. */
  void callbackFailed(Exception failure) {
    callbackFailure.compareAndSet(null, failure);
  }

  /** Throws when the server can no longer be used for the take that runs. */
  void check() throws CaptureException {
    if (gone) {
      throw gone("The audio server ended.", "Start the audio server, and measure again.");
    }
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

  /** Throws when the server is no longer the one that was opened, so that no take may start. */
  void checkUnchanged() throws CaptureException {
    check();
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
