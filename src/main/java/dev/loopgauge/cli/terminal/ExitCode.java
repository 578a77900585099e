package dev.loopgauge.cli.terminal;

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
}
