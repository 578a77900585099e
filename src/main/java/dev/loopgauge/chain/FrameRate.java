package dev.loopgauge.chain;

import dev.loopgauge.signal.SampleRate;
import java.math.BigInteger;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Pictures a second, as an exact fraction: 25 is 25/1, and what is called 29.97 is 30000/1001. Kept
 * in lowest terms.
 *
 * @param numerator frames, at least 1
 * @param denominator the seconds that these take, at least 1
 */
public record FrameRate(int numerator, int denominator) {
  /** The slowest rate accepted, in frames a second. */
  public static final int LOWEST = 1;

  /** The fastest rate accepted, in frames a second. */
  public static final int HIGHEST = 1_000;

  private static final Pattern DECIMAL = Pattern.compile("\\d{1,4}\\.\\d{1,9}");

  /** How far a decimal may lie from the rate that it stands for, in frames a second. */
  private static final double MEANT = 0.05;

  /**
   * Checks the range and reduces the fraction.
   *
   * @throws IllegalArgumentException when out of range
   */
  public FrameRate {
    if (!inRange(numerator, denominator)) {
      throw new IllegalArgumentException(
          "frame rate must be "
              + (LOWEST + " to " + HIGHEST + " frames a second, not ")
              + (numerator + "/" + denominator));
    }
    int common = BigInteger.valueOf(numerator).gcd(BigInteger.valueOf(denominator)).intValue();
    numerator /= common;
    denominator /= common;
  }

  /**
   * The rate that the trade writes as such a decimal: 23.976 and 23.98, 29.97, 59.94 and 119.88 are
   * the NTSC rates 24000/1001 and so on (SMPTE ST 12-1 for 29.97, from memory; the others common
   * practice, no source).
   */
  public static Optional<FrameRate> inTheTrade(String decimal) {
    return Optional.ofNullable(
        switch (decimal) {
          case "23.976", "23.98" -> new FrameRate(24_000, 1001);
          case "29.97" -> new FrameRate(30_000, 1001);
          case "59.94" -> new FrameRate(60_000, 1001);
          case "119.88" -> new FrameRate(120_000, 1001);
          default -> null;
        });
  }

  /** The rate in common use that a decimal such as 29.97 was meant to be, where one is near. */
  public static Optional<FrameRate> nearestInUse(String decimal) {
    if (!DECIMAL.matcher(decimal).matches()) {
      return Optional.empty();
    }
    double wanted = Double.parseDouble(decimal);
    return inUse().stream()
        .min(Comparator.comparingDouble(rate -> rate.distance(wanted)))
        .filter(rate -> rate.distance(wanted) <= MEANT);
  }

  private static List<FrameRate> inUse() {
    return List.of(
        new FrameRate(24_000, 1001),
        new FrameRate(24, 1),
        new FrameRate(25, 1),
        new FrameRate(30_000, 1001),
        new FrameRate(30, 1),
        new FrameRate(50, 1),
        new FrameRate(60_000, 1001),
        new FrameRate(60, 1),
        new FrameRate(100, 1),
        new FrameRate(120_000, 1001),
        new FrameRate(120, 1));
  }

  private double distance(double perSecond) {
    return Math.abs((double) numerator / denominator - perSecond);
  }

  public static boolean inRange(int numerator, int denominator) {
    return denominator > 0
        && numerator >= (long) LOWEST * denominator
        && numerator <= (long) HIGHEST * denominator;
  }

  /**
   * How long a number of frames lasts, in samples. The fraction is rounded once, at the end, so
   * five frames of 30000/1001 at 48 kHz are 8008 samples exactly.
   */
  public double samples(double frames, SampleRate rate) {
    return frames * ((long) rate.hertz() * denominator) / numerator;
  }

  /** As chain files write it: {@code 25} or {@code 60000/1001}. */
  @Override
  public String toString() {
    return denominator == 1 ? String.valueOf(numerator) : numerator + "/" + denominator;
  }
}
