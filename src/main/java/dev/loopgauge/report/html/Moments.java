package dev.loopgauge.report.html;

import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Moments as they are told. */
final class Moments {
  private static final DateTimeFormatter FORMAT =
      DateTimeFormatter.ofPattern("d MMM yyyy, HH:mm:ss xxx VV", Locale.ENGLISH);

  private Moments() {}

  /** {@code 27 Nov 2026, 19:02:11 +01:00 Europe/Zurich}. */
  static String told(ZonedDateTime at) {
    return FORMAT.format(at);
  }
}
