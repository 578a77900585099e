package dev.loopgauge.cli;

import dev.loopgauge.job.StopSign;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Lets Ctrl-C or a signal end a command in order that would go on for ever: the program then ends
 * with the command's own exit code, as if its time were over.
 */
final class EndHook {
  /** By then a command has ended in order, or never will. */
  private static final int ENDING_SECONDS = 10;

  private final StopSign stop;
  private final CountDownLatch shown = new CountDownLatch(1);
  private final Thread atTheEnd = new Thread(this::run, "loopgauge-end");
  private volatile int exitCode;

  /** Ready for a signal until it is closed. */
  EndHook(StopSign stop) {
    this.stop = stop;
    Runtime.getRuntime().addShutdownHook(atTheEnd);
  }

  private void run() {
    stop.stop();
    try {
      if (shown.await(ENDING_SECONDS, TimeUnit.SECONDS)) {
        Runtime.getRuntime().halt(exitCode);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** To be called once all was shown, with the exit code that follows. */
  void close(int code) {
    exitCode = code;
    try {
      Runtime.getRuntime().removeShutdownHook(atTheEnd);
    } catch (IllegalStateException ending) {
      // The program is ending already: the hook gives it the exit code.
    }
    shown.countDown();
  }
}
