package dev.loopgauge.chain;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Foreign text and numbers, made fit for one line of a message. */
public final class Shown {
  /** Control characters, halves of characters, and what breaks a line. */
  public static final String UNPRINTABLE = "[\\p{Cc}\\p{Cs}\\p{Zl}\\p{Zp}]";

  private static final int LONGEST = 60;

  private Shown() {}

  /** The text in quotes, on one line, without control characters, its end left off if long. */
  public static String quoted(String text) {
    return "'" + plain(text) + "'";
  }

  /** The text on one line, without control characters, its end left off if long. */
  public static String plain(String text) {
    boolean isLong = text.codePointCount(0, text.length()) > LONGEST;
    String start = isLong ? text.substring(0, text.offsetByCodePoints(0, LONGEST)) + "..." : text;
    return start.replaceAll("\\s+", " ").replaceAll(UNPRINTABLE, "?");
  }

  /** The number as people write it: no exponent, no needless digits. */
  public static String number(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }

  /** The number to two decimals at most, as people write it. */
  public static String rounded(double number) {
    return number(BigDecimal.valueOf(number).setScale(2, RoundingMode.HALF_UP).doubleValue());
  }
}
