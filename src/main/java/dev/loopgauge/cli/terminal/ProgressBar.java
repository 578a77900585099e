package dev.loopgauge.cli.terminal;

import dev.loopgauge.job.Progress;

/** How much of a long job is done, in one line on the error stream, for a terminal only. */
public final class ProgressBar implements Progress {
  private static final int BAR_COLUMNS = 40;

  private final Console console;
  private final String what;
  private int shown = -1;

  /** The progress of something. */
  public ProgressBar(Console console, String what) {
    this.console = console;
    this.what = what;
  }

  @Override
  public synchronized void show(double share) {
    int percent = (int) (100 * share);
    if (!console.terminal() || percent <= shown) {
      return;
    }
    shown = percent;
    int full = (int) (BAR_COLUMNS * share);
    String bar = "#".repeat(full) + ".".repeat(BAR_COLUMNS - full);
    console.err().print("\r  " + what + "  " + bar + " " + percent + " %");
    console.err().flush();
  }

  /** Clears the line. */
  @Override
  public synchronized void done() {
    if (shown >= 0) {
      console.err().print("\r" + " ".repeat(what.length() + BAR_COLUMNS + 12) + "\r");
      console.err().flush();
    }
  }
}
