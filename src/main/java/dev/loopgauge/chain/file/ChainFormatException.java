package dev.loopgauge.chain.file;

import dev.loopgauge.signal.HintedException;
import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.Mark;

/**
 * A chain file says something that can't be, or nothing that can be understood. The message is one
 * line, {@code file:line:column: expected ..., found ...}, both counted from 1.
 */
public final class ChainFormatException extends HintedException {
  private static final long serialVersionUID = 1L;

  ChainFormatException(
      String file, int line, int column, String expected, String found, String hint) {
    super(
        "unusable-chain",
        file + ":" + line + ":" + column + ": expected " + expected + ", found " + found,
        hint);
  }

  /** At a mark of the YAML reader, which counts from 0; at the start where there is none. */
  ChainFormatException(String file, Optional<Mark> at, String expected, String found, String hint) {
    this(
        file,
        at.map(Mark::getLine).orElse(0) + 1,
        at.map(Mark::getColumn).orElse(0) + 1,
        expected,
        found,
        hint);
  }
}
