package dev.loopgauge.job.event;

import dev.loopgauge.report.form.Numbers;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.ProcessBuilder.Redirect;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;

/**
 * One run of a command, limited in time. What it prints is thrown away: the screen and the JSON
 * lines are the watch's.
 *
 * @param words the program and its arguments
 * @param limit when it is ended by force
 */
record LimitedRun(List<String> words, Duration limit) {
  /**
   * Runs it.
   *
   * @param input all of its standard input; one that doesn't read it may do so
   * @return what went wrong, in words
   * @throws InterruptedException when nobody waits any longer; the command is ended then
   */
  Optional<String> on(String input) throws InterruptedException {
    Process process;
    try {
      process =
          new ProcessBuilder(words)
              .redirectOutput(Redirect.DISCARD)
              .redirectError(Redirect.DISCARD)
              .start();
    } catch (IOException e) {
      return Optional.of("could not be started");
    }
    CompletableFuture<Integer> end = process.onExit().thenApply(Process::exitValue);
    // Also where it reads nothing, so that handing over its input waits.
    CompletableFuture<Integer> limited =
        end.orTimeout(limit.toMillis(), TimeUnit.MILLISECONDS)
            .whenComplete((code, late) -> kill(process));
    try {
      hand(input, process);
      int code = limited.get();
      return code == 0 ? Optional.empty() : Optional.of("ended with " + code);
    } catch (ExecutionException e) {
      return Optional.of("was ended after " + Numbers.brief(limit.toMillis() / 1000.0, 3) + " s");
    } finally {
      kill(process);
    }
  }

  private static void hand(String input, Process process) {
    try (OutputStream pipe = process.getOutputStream()) {
      pipe.write(input.getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      // It doesn't read, or has ended: its exit code tells.
    }
  }

  /** Ends it with all that it started. */
  private static void kill(Process process) {
    process.descendants().forEach(ProcessHandle::destroyForcibly);
    process.destroyForcibly();
  }
}
