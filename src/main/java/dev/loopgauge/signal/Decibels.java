package dev.loopgauge.signal;

/** Levels: amplitudes as decibels, where 0 dB is a factor of one. */
public final class Decibels {
  private Decibels() {}

  /** The amplitude factor of a level: 10^(dB/20). */
  public static double toFactor(double db) {
    return Math.pow(10, db / 20);
  }

  /** The level of an amplitude factor: 20 log10(factor); negative infinity for 0. */
  public static double ofFactor(double factor) {
    return 20 * Math.log10(Math.abs(factor));
  }

  /** The level of a power ratio: 10 log10(ratio); negative infinity for 0. */
  public static double ofPower(double ratio) {
    return 10 * Math.log10(ratio);
  }
}
