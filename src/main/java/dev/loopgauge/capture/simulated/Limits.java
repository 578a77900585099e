package dev.loopgauge.capture.simulated;

/** The range check that every fault's figures go through. */
final class Limits {
  private Limits() {}

  /**
   * Lets a figure within its range pass.
   *
   * @throws IllegalArgumentException when it is out of range, infinite or not a number
   */
  static void check(String what, double value, double lowest, double highest, String unit) {
    if (!(value >= lowest && value <= highest)) {
      throw new IllegalArgumentException(
          "%s must be %s to %s %s, not %s"
              .formatted(what, plain(lowest), plain(highest), unit, plain(value)));
    }
  }

  /** The figure without a useless {@code .0}, in any locale. */
  private static String plain(double value) {
    String text = Double.toString(value);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }
}
