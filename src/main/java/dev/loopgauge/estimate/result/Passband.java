package dev.loopgauge.estimate.result;

/**
 * The frequencies that a delay was read from.
 *
 * @param fromHz the lowest, in Hz, above 0
 * @param toHz the highest, in Hz
 */
public record Passband(double fromHz, double toHz) {
  /**
   * Checks the order.
   *
   * @throws IllegalArgumentException when it is not 0 &lt; from &lt;= to, or not finite
   */
  public Passband {
    if (!(fromHz > 0 && fromHz <= toHz && toHz < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "a band goes up from above 0 Hz, not from " + fromHz + " to " + toHz);
    }
  }
}
