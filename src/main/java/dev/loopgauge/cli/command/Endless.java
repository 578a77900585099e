package dev.loopgauge.cli.command;

import dev.loopgauge.job.StopSign;

/** A command that goes on until somebody has enough: Ctrl-C is its normal end. */
public interface Endless extends Subcommand {
  /** What ends it. */
  StopSign stopSign();
}
