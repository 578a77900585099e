package dev.loopgauge.verify;

import dev.loopgauge.signal.HintedException;

/**
 * A file of readings says something that can't be, or nothing that can be understood. The message
 * is one line, {@code file:line: expected ..., found ...}, counted from 1.
 */
public final class SeriesFormatException extends HintedException {
  private static final long serialVersionUID = 1L;

  SeriesFormatException(String file, long line, String expected, String found, String hint) {
    super(
        "unusable-series", file + ":" + line + ": expected " + expected + ", found " + found, hint);
  }
}
