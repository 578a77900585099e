package dev.loopgauge.cli.command;

import dev.loopgauge.job.Answer;

/**
 * One command: its fields are the arguments, filled in by picocli.
 *
 * <p>To keep the start quick, fields and method signatures of a command use types of the JDK and
 * small values only; what is heavy is named inside methods, so that it loads when they run.
 */
public interface Subcommand {
  /**
   * Turns the arguments into a job and has it done. Progress and warnings go to the console's error
   * stream; the result is returned, never printed.
   *
   * @throws Exception when the job can't be done; {@link dev.loopgauge.cli.terminal.Failure#of}
   *     says which become what
   */
  Answer answer() throws Exception;
}
