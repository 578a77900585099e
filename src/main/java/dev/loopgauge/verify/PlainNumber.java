package dev.loopgauge.verify;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers within sentences: plain digits in every locale. */
final class PlainNumber {
  private PlainNumber() {}

  /** The number with at most so many decimals. */
  static String of(double number, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP);
    BigDecimal stripped = rounded.stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
  }
}
