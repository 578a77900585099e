package dev.loopgauge.job;

import java.util.function.Supplier;

/** Values that refuse what the command line put into them. */
public final class Refusals {
  private Refusals() {}

  /**
   * What the supplier makes.
   *
   * @throws UsageException when it refuses its arguments
   */
  public static <T> T asUsage(Supplier<T> maker) {
    try {
      return maker.get();
    } catch (IllegalArgumentException e) {
      throw new UsageException(e.getMessage(), "`loopgauge COMMAND --help` shows what it takes");
    }
  }
}
