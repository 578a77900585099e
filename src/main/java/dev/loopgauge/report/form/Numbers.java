package dev.loopgauge.report.form;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as written in documents: plain digits, a point, no grouping, in every locale. */
public final class Numbers {
  /** 53 bits of 6.02 dB: beyond this, a level tells of double precision and of nothing else. */
  private static final double MOST_DB = 319;

  /** Up to here a product with a power of ten is off by far less than {@link #NEAR_TIE}. */
  private static final double MOST_QUICK = 1e6;

  private static final double NEAR_TIE = 1e-6;

  private Numbers() {}

  /**
   * A number for JSON: rounded half up to {@code decimals}, without trailing zeros.
   *
   * @throws NumberFormatException when {@code value} is infinite or not a number
   */
  public static BigDecimal rounded(double value, int decimals) {
    BigDecimal rounded = roundedHalfUp(value, decimals);
    BigDecimal stripped = rounded.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
  }

  /** Only near a tie the double's own digits are needed, which take long to find. */
  private static BigDecimal roundedHalfUp(double value, int decimals) {
    double scaled = value * Math.pow(10, decimals);
    double whole = Math.floor(scaled);
    return Math.abs(scaled) < MOST_QUICK && Math.abs(scaled - whole - 0.5) > NEAR_TIE
        ? BigDecimal.valueOf(Math.round(scaled), decimals)
        : BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
  }

  /** An uncertainty for JSON: as {@link #rounded}, but rounded up, so that it never reads zero. */
  public static BigDecimal roundedUp(double uncertainty, int decimals) {
    return rounded(ceiling(uncertainty, decimals).doubleValue(), decimals);
  }

  /**
   * A number for text, with exactly {@code decimals} of them.
   *
   * @throws NumberFormatException when {@code value} is infinite or not a number
   */
  public static String plain(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }

  /** A number for text with at most {@code decimals} of them: 595, 595.5. */
  public static String brief(double value, int decimals) {
    return rounded(value, decimals).toPlainString();
  }

  /** A number for text: as {@link #plain}, with its sign. */
  public static String signed(double value, int decimals) {
    String plain = plain(value, decimals);
    return plain.startsWith("-") ? plain : "+" + plain;
  }

  /** An uncertainty for text: as {@link #plain}, but rounded up. */
  public static String plainUp(double uncertainty, int decimals) {
    return ceiling(uncertainty, decimals).toPlainString();
  }

  /**
   * A number with its uncertainty for text, as many decimals as that deserves: {@code 723.02 ±
   * 0.04}.
   *
   * @param most the most decimals to give
   */
  public static String plusMinus(double value, double uncertainty, int most) {
    int decimals = decimalsFor(uncertainty, most);
    return plain(value, decimals) + " ± " + plainUp(uncertainty, decimals);
  }

  /** The same with the number's sign: {@code +64.00 ± 0.06}. */
  public static String signedPlusMinus(double value, double uncertainty, int most) {
    int decimals = decimalsFor(uncertainty, most);
    return signed(value, decimals) + " ± " + plainUp(uncertainty, decimals);
  }

  /**
   * How many decimals a value deserves on the screen: those that lead to the second significant
   * digit of its uncertainty (JCGM 100:2008, 7.2.6, asks for two at most).
   *
   * @param uncertainty the expanded uncertainty, positive
   * @param most the most decimals to give
   * @return 0 to {@code most}
   */
  public static int decimalsFor(double uncertainty, int most) {
    return Math.max(0, Math.min(most, secondDigit(uncertainty)));
  }

  /**
   * How many decimals lead to the second significant digit of an uncertainty.
   *
   * @param uncertainty positive and finite
   * @return negative where that digit stands before the point
   */
  public static int secondDigit(double uncertainty) {
    BigDecimal exact = BigDecimal.valueOf(uncertainty);
    return exact.scale() - exact.precision() + 2;
  }

  /** A time from the start as hours, minutes and seconds: {@code 1:02:03.4}. */
  public static String clock(double seconds) {
    long tenths = Math.round(seconds * 10);
    return String.format(
        Locale.ROOT,
        "%d:%02d:%02d.%d",
        tenths / 36_000,
        tenths / 600 % 60,
        tenths / 10 % 60,
        tenths % 10);
  }

  /** A time with its unit: {@code 7.4 ms}. */
  public static String inMs(BigDecimal ms, int decimals) {
    return plain(ms.doubleValue(), decimals) + " ms";
  }

  /** A level within what arithmetic can hold apart, so that a flawless copy has a level too. */
  public static double tellableDb(double db) {
    return Math.max(-MOST_DB, Math.min(db, MOST_DB));
  }

  private static BigDecimal ceiling(double uncertainty, int decimals) {
    return BigDecimal.valueOf(uncertainty).setScale(decimals, RoundingMode.CEILING);
  }
}
