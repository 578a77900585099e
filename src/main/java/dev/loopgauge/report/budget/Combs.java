package dev.loopgauge.report.budget;

import dev.loopgauge.plan.Comb;
import dev.loopgauge.plan.Effect;
import dev.loopgauge.plan.Overlap;
import dev.loopgauge.report.form.Numbers;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Comb filters, in words and for scripts. */
final class Combs {
  private static final int DB_DECIMALS = 2;

  /** Below this, in Hz, a frequency is told with one decimal. */
  private static final double SMALL_HZ = 100;

  private Combs() {}

  /** Where its nulls are: {@code first null 49.2 Hz, then every 98.4 Hz}. */
  static String nulls(Comb comb) {
    return "first null " + hz(comb.firstNullHz()) + ", then every " + hz(comb.nullSpacingHz());
  }

  /** A frequency with its unit; a dash where there is none. */
  static String hz(OptionalDouble hertz) {
    return hertz.isPresent()
        ? Numbers.plain(hertz.getAsDouble(), hertz.getAsDouble() < SMALL_HZ ? 1 : 0) + " Hz"
        : "-";
  }

  /** Peak to dip with its unit: {@code 9.6 dB}, or {@code full} where the nulls are silent. */
  static String ripple(Comb comb) {
    return comb.rippleDb().isPresent()
        ? Numbers.plain(comb.rippleDb().getAsDouble(), 1) + " dB"
        : "full";
  }

  /** The effect in words; what needs attention is in capitals. */
  static String effect(Effect effect) {
    return effect == Effect.SAFE ? effect.label() : effect.label().toUpperCase(Locale.ROOT);
  }

  /** Puts where the nulls are. */
  static void putNulls(Map<String, Object> json, Comb comb) {
    DelayKeys.putHz(json, "firstNullHz", comb.firstNullHz());
    DelayKeys.putHz(json, "nullSpacingHz", comb.nullSpacingHz());
  }

  /** Puts the comb of two copies and what comes of it. */
  static void put(Map<String, Object> json, Overlap overlap) {
    Comb comb = overlap.comb();
    json.put("laterLevelDb", Numbers.rounded(overlap.laterLevelDb(), DB_DECIMALS));
    putNulls(json, comb);
    OptionalDouble ripple = comb.rippleDb();
    json.put(
        "rippleDb", ripple.isPresent() ? Numbers.rounded(ripple.getAsDouble(), DB_DECIMALS) : null);
    json.put("effect", overlap.effect().label());
    json.put("reason", overlap.reason());
  }
}
