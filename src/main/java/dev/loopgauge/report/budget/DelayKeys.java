package dev.loopgauge.report.budget;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.signal.Latency;
import java.math.BigDecimal;
import java.util.Map;
import java.util.OptionalDouble;

/** Predicted delays and frequencies as keys of documents, each with its unit. */
public final class DelayKeys {
  private static final int SAMPLE_DECIMALS = 4;
  private static final int MS_DECIMALS = 6;
  private static final int HZ_DECIMALS = 2;

  private DelayKeys() {}

  /** Puts a delay as {@code ...Samples} and {@code ...Ms}. */
  public static void put(Map<String, Object> json, String name, Latency delay) {
    json.put(name + "Samples", samples(delay.samples()));
    json.put(name + "Ms", ms(delay.ms()));
  }

  /** Samples, rounded. */
  public static BigDecimal samples(double samples) {
    return Numbers.rounded(samples, SAMPLE_DECIMALS);
  }

  /** Milliseconds, rounded. */
  public static BigDecimal ms(double ms) {
    return Numbers.rounded(ms, MS_DECIMALS);
  }

  /** Puts a frequency, rounded; null where there is none. */
  public static void putHz(Map<String, Object> json, String key, OptionalDouble hertz) {
    json.put(key, hertz.isPresent() ? Numbers.rounded(hertz.getAsDouble(), HZ_DECIMALS) : null);
  }
}
