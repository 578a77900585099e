package dev.loopgauge.cli.command;

import dev.loopgauge.job.SoFar;

/** A command that still prints what it has when the program is told to stop. */
public interface Stoppable extends Subcommand {
  /** What it has heard so far. */
  SoFar soFar();
}
