package dev.loopgauge.cli.terminal;

import dev.loopgauge.job.Ending;

/** The exit codes, fixed because people script against them. */
public final class ExitCode {
  /** All good. */
  public static final int GOOD = 0;

  /** Measured, but outside the budget or a limit, or not shown to be inside. */
  public static final int OUTSIDE = 1;

  /** Wrong arguments or an unusable file. */
  public static final int USAGE = 2;

  /** No trustworthy measurement. */
  public static final int NOT_TRUSTWORTHY = 3;

  /** The sound device or audio server failed. */
  public static final int AUDIO = 4;

  /** The journal could not be read or written. */
  public static final int JOURNAL = 5;

  private ExitCode() {}

  /** The exit code of an ending. */
  public static int of(Ending ending) {
    return switch (ending) {
      case GOOD -> GOOD;
      case OUTSIDE -> OUTSIDE;
      case NOT_TRUSTWORTHY -> NOT_TRUSTWORTHY;
      case SOUND_FAILED -> AUDIO;
      case NOT_KEPT -> JOURNAL;
    };
  }
}
