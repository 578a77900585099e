package dev.loopgauge.verify;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers within sentences: plain digits in every locale. */
public final class PlainNumber {
  private PlainNumber() {}

  /** The number, rounded to at most this number of decimals. */
  public static String of(double number, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP);
    BigDecimal stripped = rounded.stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
  }

  /** The same, rounded up: a bound. */
  public static String upTo(double number, int decimals) {
    return BigDecimal.valueOf(number).setScale(decimals, RoundingMode.UP).toPlainString();
  }

  /** A moment in a recording: {@code 0:01.4}, {@code 62:05.0}. */
  public static String clock(double seconds) {
    long tenths = Math.round(seconds * 10);
    return String.format(Locale.ROOT, "%d:%02d.%d", tenths / 600, tenths / 10 % 60, tenths % 10);
  }
}
