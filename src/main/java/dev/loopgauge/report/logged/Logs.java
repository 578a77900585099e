package dev.loopgauge.report.logged;

import dev.loopgauge.report.form.Numbers;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times and figures of entries as they are told. */
public final class Logs {
  static final String NO_NUMBER = "no trustworthy reading";

  private static final DateTimeFormatter BRIEF =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter LISTED =
      DateTimeFormatter.ofPattern("yy-MM-dd HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter EXACT =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss xxx '('VV')'", Locale.ENGLISH);
  private static final int MOST_COMPARED_DECIMALS = 2;

  private Logs() {}

  /** {@code 2026-05-01 19:00}, where it was measured. */
  public static String brief(ZonedDateTime at) {
    return BRIEF.format(at);
  }

  /** {@code 26-05-01 19:00}, for a column. */
  static String listed(ZonedDateTime at) {
    return LISTED.format(at);
  }

  /** {@code 2026-05-01 19:00:00 +01:00 (Europe/Lisbon)}. */
  static String exact(ZonedDateTime at) {
    return EXACT.format(at);
  }

  /** How many decimals of a sample an uncertainty leaves, at most {@code 2}. */
  static int decimals(double uncertaintySamples) {
    return uncertaintySamples > 0
        ? Numbers.decimalsFor(uncertaintySamples, MOST_COMPARED_DECIMALS)
        : MOST_COMPARED_DECIMALS;
  }
}
