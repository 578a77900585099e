package dev.loopgauge.cli;

import dev.loopgauge.job.Answer;
import dev.loopgauge.job.SoFar;
import java.util.function.Consumer;

/**
 * Shows what a long job has heard so far when the program is told to stop, by Ctrl-C or a signal.
 * The virtual machine then ends with the signal's exit code.
 */
final class StopHook {
  private final SoFar soFar;
  private final Consumer<Answer> show;
  private final Thread atTheEnd = new Thread(this::run, "loopgauge-stop");

  /** Ready for a signal until it is closed. */
  StopHook(SoFar soFar, Consumer<Answer> show) {
    this.soFar = soFar;
    this.show = show;
    Runtime.getRuntime().addShutdownHook(atTheEnd);
  }

  private void run() {
    try {
      soFar.awaitShown();
    } catch (InterruptedException e) {
      return;
    }
    soFar.taken().ifPresent(show);
  }

  /** To be called once the job's own answer was shown, or the job failed. */
  void close() {
    soFar.shown();
    try {
      Runtime.getRuntime().removeShutdownHook(atTheEnd);
    } catch (IllegalStateException ending) {
      // The program is ending already, and the hook sees that all was shown.
    }
  }
}
