package dev.loopgauge.chain;

import java.util.Collection;

/** A path was asked for that the chain does not have. */
public final class UnknownPathException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String hint;

  UnknownPathException(String chain, String found, Collection<String> known) {
    super("expected a path of '" + chain + "', found " + Shown.quoted(found));
    this.hint = Nearest.hint(found, known);
  }

  /** What to try: the nearest known name, or the paths there are. */
  public String hint() {
    return hint;
  }
}
