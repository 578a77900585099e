package dev.loopgauge.chain;

import dev.loopgauge.signal.UncheckedHintedException;
import java.util.Collection;

/** A path was asked for that the chain does not have. */
public final class UnknownPathException extends UncheckedHintedException {
  private static final long serialVersionUID = 1L;

  UnknownPathException(String chain, String found, Collection<String> known) {
    super(
        "unknown-path",
        "expected a path of '" + chain + "', found " + Shown.quoted(found),
        Nearest.hint(found, known));
  }
}
