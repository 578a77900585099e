package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.measure.Soak;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.Verdict;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What a soak came to.
 *
 * @param soak what happened
 * @param askedMinutes how long it should go on
 * @param ended why it ended before, if the sound failed
 * @param comparison how the delay since its last step stands against the budget, where there is one
 * @param hostCheck what that delay says about a reported one, where that was asked
 */
public record SoakDocument(
    Soak soak,
    double askedMinutes,
    Optional<String> ended,
    Optional<Comparison> comparison,
    Optional<HostCheck> hostCheck)
    implements Document {
  private static final int SAMPLE_DECIMALS = 4;
  private static final int MOST_TOLD = 10;

  /** Whether nothing happened, and the delay is what budget and host say it is. */
  public boolean isGood() {
    return soak.isClean()
        && ended.isEmpty()
        && comparison.map(Comparison::verdict).map(Verdict.WITHIN::equals).orElse(true)
        && hostCheck.filter(HostCheck::fails).isEmpty();
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet().line(verdict());
    soak.level().ifPresent(level -> addDelay(sheet, level));
    ended.ifPresent(why -> sheet.row("ended", why));
    sheet.row(
        "takes",
        "%d: %d with sound lost, %d with a step, %d unreadable, %d failed"
            .formatted(
                soak.takes(),
                soak.count(Soak.Kind.DROPOUT),
                soak.count(Soak.Kind.STEP),
                soak.count(Soak.Kind.UNREADABLE),
                soak.count(Soak.Kind.FAILED)));
    sheet.row("clean for", time(soak.longestCleanSeconds()) + " in a row at most");
    soak.worst().ifPresent(worst -> sheet.row("worst", told(worst)));
    soak.moments().stream().limit(MOST_TOLD).forEach(moment -> sheet.row("", told(moment)));
    if (soak.oddTakes() > MOST_TOLD) {
      sheet.row("", "and " + (soak.oddTakes() - MOST_TOLD) + " more; --json lists the first 100");
    }
    return sheet.toString();
  }

  private String verdict() {
    String listened = time(soak.seconds());
    if (ended.isPresent()) {
      return "BROKE OFF after %s.".formatted(listened);
    }
    return soak.isClean()
        ? "CLEAN for %s: nothing was lost, the delay stayed.".formatted(listened)
        : "NOT CLEAN: something happened within %s.".formatted(listened);
  }

  private void addDelay(Sheet sheet, Measurement level) {
    sheet.row("delay", delay(level));
    if (comparison.isPresent()) {
      sheet.row("verdict", Verdicts.line(level, comparison));
      sheet.row("budget", Figures.predicted(comparison.get()));
    }
    hostCheck.ifPresent(check -> sheet.row("host check", HostCheckLines.text(check)));
  }

  private String delay(Measurement level) {
    return "%s ± %s samples, ranged over %s"
        .formatted(
            Numbers.plain(level.delay().samples(), 2),
            Numbers.plainUp(level.uncertaintySamples(), 2),
            Numbers.plain(soak.rangeSamples(), 2));
  }

  private static String told(Soak.Moment moment) {
    String moved =
        moment.kind() == Soak.Kind.STEP
            ? " by " + Numbers.signed(moment.movedSamples(), 2) + " samples"
            : "";
    return "at " + time(moment.atSeconds()) + ": " + moment.text() + moved;
  }

  private static String time(double seconds) {
    return seconds < 60
        ? Numbers.brief(seconds, 1) + " s"
        : Numbers.brief(seconds / 60, 1) + " min";
  }

  @Override
  public Map<String, Object> json() {
    String outcome = ended.isPresent() ? "broke-off" : soak.isClean() ? "clean" : "not-clean";
    Map<String, Object> json = Document.head("soak", outcome);
    Map<String, Object> part = new LinkedHashMap<>();
    part.put("askedMinutes", Numbers.rounded(askedMinutes, SAMPLE_DECIMALS));
    part.put("heardSeconds", Numbers.rounded(soak.seconds(), 3));
    part.put("endedBy", ended.orElse(null));
    part.put("takes", soak.takes());
    part.put("dropouts", soak.count(Soak.Kind.DROPOUT));
    part.put("steps", soak.count(Soak.Kind.STEP));
    part.put("unreadableTakes", soak.count(Soak.Kind.UNREADABLE));
    part.put("failedTakes", soak.count(Soak.Kind.FAILED));
    part.put("longestCleanSeconds", Numbers.rounded(soak.longestCleanSeconds(), 3));
    part.put("delaySamples", soak.level().map(SoakDocument::samples).orElse(null));
    part.put("rangeSamples", Numbers.rounded(soak.rangeSamples(), SAMPLE_DECIMALS));
    part.put("worst", soak.worst().map(SoakDocument::moment).orElse(null));
    part.put("moments", soak.moments().stream().map(SoakDocument::moment).toList());
    json.put("soak", part);
    json.put("comparison", comparison.map(MeasurementJson::comparison).orElse(null));
    hostCheck.ifPresent(check -> json.put("hostCheck", HostCheckLines.json(check)));
    return json;
  }

  private static Object samples(Measurement level) {
    return Numbers.rounded(level.delay().samples(), SAMPLE_DECIMALS);
  }

  private static Map<String, Object> moment(Soak.Moment moment) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("kind", moment.kind().name().toLowerCase(Locale.ROOT));
    json.put("atSeconds", Numbers.rounded(moment.atSeconds(), 3));
    json.put("movedSamples", Numbers.rounded(moment.movedSamples(), SAMPLE_DECIMALS));
    json.put("text", moment.text());
    return json;
  }
}
