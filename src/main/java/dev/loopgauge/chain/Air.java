package dev.loopgauge.chain;

/** Sound in air. */
public final class Air {
  /** The coldest air that the formula covers, in degrees C (scope of ISO 9613-1, from memory). */
  public static final double COLDEST_C = -20;

  /** The warmest air that the formula covers, in degrees C (scope of ISO 9613-1, from memory). */
  public static final double WARMEST_C = 50;

  /**
   * The temperature taken where a chain file gives none, in degrees C: the reference of ISO 9613-1.
   */
  public static final double REFERENCE_C = 20;

  /** Metres in a foot: the international foot, exact by definition. */
  public static final double METRES_PER_FOOT = 0.3048;

  private static final double ZERO_C_IN_KELVIN = 273.15;
  private static final double REFERENCE_METRES_PER_SECOND = 343.2;

  private Air() {}

  /**
   * The speed of sound in dry air, by ISO 9613-1:1993 (reported): c = 343.2 sqrt(T / 293.15 K).
   * Humidity, left out here, moves it by up to about 0.6 %.
   *
   * @param celsius {@value #COLDEST_C} to {@value #WARMEST_C} degrees C
   * @return metres a second
   * @throws IllegalArgumentException when out of range
   */
  public static double metresPerSecond(double celsius) {
    if (!(celsius >= COLDEST_C && celsius <= WARMEST_C)) {
      throw new IllegalArgumentException(
          "air temperature must be " + COLDEST_C + " to " + WARMEST_C + " C, not " + celsius);
    }
    double ratio = (celsius + ZERO_C_IN_KELVIN) / (REFERENCE_C + ZERO_C_IN_KELVIN);
    return REFERENCE_METRES_PER_SECOND * Math.sqrt(ratio);
  }
}
