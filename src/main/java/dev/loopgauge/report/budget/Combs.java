package dev.loopgauge.report.budget;

import dev.loopgauge.plan.Blend;
import dev.loopgauge.report.form.Numbers;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;

/** Comb filters in words. */
final class Combs {
  /** Below this, in Hz, a frequency is told with one decimal. */
  private static final double SMALL_HZ = 100;

  private Combs() {}

  /** A frequency with its unit; a dash where there is none. */
  static String hz(Optional<BigDecimal> hertz) {
    if (hertz.isEmpty()) {
      return "-";
    }
    double hz = hertz.get().doubleValue();
    return Numbers.plain(hz, hz < SMALL_HZ ? 1 : 0) + " Hz";
  }

  /** Peak to dip with its unit: {@code 9.6 dB}, or {@code full} where the nulls are silent. */
  static String ripple(Optional<BigDecimal> db) {
    return db.isPresent() ? Numbers.plain(db.get().doubleValue(), 1) + " dB" : "full";
  }

  /** The effect in words; what needs attention is in capitals. */
  static String effect(Blend effect) {
    return effect == Blend.SAFE ? effect.label() : effect.label().toUpperCase(Locale.ROOT);
  }
}
