package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;

/** Entries of the journal as they are told and as keys of documents. */
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

  /** The name of the path, cut to this many characters. */
  static String path(Heading heading, int most) {
    return heading.path().map(path -> OneLine.brief(path, most)).orElse("-");
  }

  /** {@code 595.02 ± 0.04}, in samples. */
  static String samples(LoggedDelay logged) {
    return shown(logged).inSamples();
  }

  /** {@code 595.02}, in samples. */
  static String bare(LoggedDelay logged) {
    return shown(logged).bareSamples();
  }

  /** {@code 12.3963}, in ms. */
  static String ms(LoggedDelay logged) {
    return shown(logged).bareMs();
  }

  private static ShownDelay shown(LoggedDelay logged) {
    return new ShownDelay(
        logged.delay().samples(), logged.uncertaintySamples(), logged.delay().rate().hertz());
  }

  /** How many decimals of a sample an uncertainty leaves, at most {@code 2}. */
  static int decimals(double uncertaintySamples) {
    return uncertaintySamples > 0
        ? Numbers.decimalsFor(uncertaintySamples, MOST_COMPARED_DECIMALS)
        : MOST_COMPARED_DECIMALS;
  }

  /** What an entry is listed by. */
  static Map<String, Object> json(Heading heading) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("id", heading.id().toString());
    json.put("at", heading.at().toOffsetDateTime().toString());
    json.put("zone", heading.at().getZone().getId());
    json.put("show", heading.show());
    json.put("when", heading.when().label());
    json.put("path", heading.path().orElse(null));
    json.put("outcome", heading.outcome());
    json.put("sampleRateHz", heading.delay().map(d -> d.delay().rate().hertz()).orElse(null));
    json.put("delaySamples", heading.delay().map(d -> samplesOf(d)).orElse(null));
    json.put("delayMs", heading.delay().map(d -> msOf(d)).orElse(null));
    json.put("uncertaintySamples", heading.delay().map(d -> uncertaintyOf(d)).orElse(null));
    json.put("corrects", heading.corrects().map(UUID::toString).orElse(null));
    return json;
  }

  private static BigDecimal samplesOf(LoggedDelay logged) {
    return Written.samples(logged.delay().samples(), logged.uncertaintySamples());
  }

  private static BigDecimal uncertaintyOf(LoggedDelay logged) {
    return Written.uncertainSamples(logged.uncertaintySamples());
  }

  private static BigDecimal msOf(LoggedDelay logged) {
    double uncertainty = logged.uncertaintySamples() * 1000 / logged.delay().rate().hertz();
    return Written.ms(logged.delay().ms(), uncertainty);
  }
}
