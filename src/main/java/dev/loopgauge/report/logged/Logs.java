package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.report.budget.DelayKeys;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Typed;
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
  private static final DateTimeFormatter EXACT =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss xxx '('VV')'", Locale.ENGLISH);
  private static final int MOST_SAMPLE_DECIMALS = 3;
  private static final int MOST_MS_DECIMALS = 4;

  private Logs() {}

  /** {@code 2026-05-01 19:00}, where it was measured. */
  public static String brief(ZonedDateTime at) {
    return BRIEF.format(at);
  }

  /** {@code 2026-05-01 19:00:00 +01:00 (Europe/Lisbon)}. */
  static String exact(ZonedDateTime at) {
    return EXACT.format(at);
  }

  /** The name of the path, cut to so many characters. */
  static String path(Heading heading, int most) {
    return heading.path().map(path -> Typed.brief(path, most)).orElse("-");
  }

  /** {@code 595.02 ± 0.04}, in samples. */
  static String samples(LoggedDelay logged) {
    int decimals = decimals(logged.uncertaintySamples());
    return Numbers.plain(logged.delay().samples(), decimals)
        + " ± "
        + Numbers.plainUp(logged.uncertaintySamples(), decimals);
  }

  /** {@code 595.02}, in samples. */
  static String bare(LoggedDelay logged) {
    return Numbers.plain(logged.delay().samples(), decimals(logged.uncertaintySamples()));
  }

  /** {@code 12.3963}, in ms. */
  static String ms(LoggedDelay logged) {
    double uncertainty = logged.uncertaintySamples() * 1000 / logged.delay().rate().hertz();
    return Numbers.plain(logged.delay().ms(), decimals(uncertainty, MOST_MS_DECIMALS));
  }

  /** How many decimals of a sample an uncertainty leaves. */
  static int decimals(double uncertaintySamples) {
    return decimals(uncertaintySamples, MOST_SAMPLE_DECIMALS);
  }

  private static int decimals(double uncertainty, int most) {
    return uncertainty > 0 ? Numbers.decimalsFor(uncertainty, most) : most;
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
    json.put("delayMs", heading.delay().map(d -> DelayKeys.ms(d.delay().ms())).orElse(null));
    json.put("uncertaintySamples", heading.delay().map(d -> uncertaintyOf(d)).orElse(null));
    json.put("corrects", heading.corrects().map(UUID::toString).orElse(null));
    return json;
  }

  private static BigDecimal samplesOf(LoggedDelay logged) {
    return DelayKeys.samples(logged.delay().samples());
  }

  private static BigDecimal uncertaintyOf(LoggedDelay logged) {
    return Numbers.roundedUp(logged.uncertaintySamples(), 4);
  }
}
