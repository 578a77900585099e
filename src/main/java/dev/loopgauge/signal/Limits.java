package dev.loopgauge.signal;

/** The range check that the figures of filters and faults go through. */
public final class Limits {
  private Limits() {}

  /**
   * Lets a figure within its range pass.
   *
   * @throws IllegalArgumentException when it is out of range, infinite or not a number
   */
  public static void check(String what, double value, double lowest, double highest, String unit) {
    if (!(value >= lowest && value <= highest)) {
      throw new IllegalArgumentException(
          what
              + " must be "
              + plain(lowest)
              + " to "
              + plain(highest)
              + " "
              + unit
              + ", not "
              + plain(value));
    }
  }

  /** The figure without a useless {@code .0}, in any locale. */
  private static String plain(double value) {
    String text = Double.toString(value);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }
}
