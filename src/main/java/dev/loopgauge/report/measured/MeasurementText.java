package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.FindingCode;
import dev.loopgauge.estimate.Polarity;
import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.measured.ComparisonRecord.ExplanationRecord;
import dev.loopgauge.report.measured.MeasurementRecord.ArrivalRecord;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A measurement as text: the verdict in words first, then what it rests on.
 *
 * @param sheet where to tell it
 * @param findings what there is to know about it
 * @param comparison how it stands against its budget
 */
record MeasurementText(
    Sheet sheet, List<FindingRecord> findings, Optional<ComparisonRecord> comparison) {
  private static final int MOST_COPIES = 3;
  private static final int MOST_EXPLANATIONS = 4;

  /** Tells it. */
  void tell(
      Optional<MeasurementRecord> measurement,
      Optional<HostCheckRecord> hostCheck,
      Optional<Headline> headline) {
    headline.ifPresent(line -> sheet.line(line.line()));
    measurement.ifPresentOrElse(m -> found(m, hostCheck), this::refused);
  }

  /** Why there is no number. */
  String refusal() {
    String why =
        findings.stream()
            .filter(FindingRecord::isRefusal)
            .findFirst()
            .flatMap(FindingRecord::text)
            .orElse("the document doesn't say why");
    return "No trustworthy reading: " + sentence(why);
  }

  private void refused() {
    int first = 0;
    while (first < findings.size() && !findings.get(first).isRefusal()) {
      first++;
    }
    List<FindingRecord> others = new ArrayList<>(findings);
    Optional<FindingRecord> why =
        first < findings.size() ? Optional.of(others.remove(first)) : Optional.empty();
    sheet.line(refusal());
    why.flatMap(FindingRecord::hint).ifPresent(hint -> sheet.row("try", hint));
    others.forEach(this::finding);
  }

  private void found(MeasurementRecord m, Optional<HostCheckRecord> hostCheck) {
    sheet.row("measured", Figures.measured(m.delay()));
    comparison.ifPresent(c -> compared(m, c));
    hostCheck.flatMap(HostCheckRecord::text).ifPresent(text -> sheet.row("host check", text));
    sheet.row("how", how(m));
    m.arrivals().stream().skip(1).limit(MOST_COPIES).forEach(copy -> copy(m, copy));
    findings.forEach(this::finding);
    List<String> clean = clean(m);
    if (!clean.isEmpty()) {
      sheet.row("also clean", String.join(", ", clean));
    }
  }

  private void compared(MeasurementRecord m, ComparisonRecord c) {
    sheet.row("budget", Figures.predicted(c, m.delay()));
    Figures.allowance(c).ifPresent(more -> sheet.row("", more));
    sheet.row("difference", Figures.difference(c, m.delay()));
    boolean tied = c.explanations().stream().anyMatch(e -> e.ties().orElse(false));
    String label = tied ? "either" : "most likely";
    for (ExplanationRecord explanation :
        c.explanations().stream().limit(MOST_EXPLANATIONS).toList()) {
      sheet.row(explanation.fits() ? label : "cause", Figures.told(explanation, m.delay()));
      label = "or";
    }
    if (c.explanations().size() > MOST_EXPLANATIONS) {
      int more = c.explanations().size() - MOST_EXPLANATIONS;
      sheet.row("or", more + " more, which --json lists");
    }
    c.tellApart()
        .flatMap(ComparisonRecord.ExtraRecord::text)
        .ifPresent(text -> sheet.row("to tell", text));
  }

  private static String how(MeasurementRecord m) {
    List<String> how = new ArrayList<>();
    m.method().ifPresent(how::add);
    m.repeats().ifPresent(n -> how.add(n == 1 ? "1 reading" : n + " readings"));
    m.signalToNoiseDb().ifPresent(db -> how.add(againstNoise(db.doubleValue())));
    m.levelDb().ifPresent(db -> how.add("level " + Numbers.plain(db.doubleValue(), 1) + " dB"));
    return String.join(", ", how);
  }

  private static String againstNoise(double db) {
    return Numbers.plain(Math.abs(db), 0) + (db < 0 ? " dB below noise" : " dB above noise");
  }

  private static String sentence(String text) {
    return text.endsWith(".") ? text : text + ".";
  }

  private void copy(MeasurementRecord m, ArrivalRecord copy) {
    List<String> words = new ArrayList<>();
    copy.delaySamples()
        .ifPresent(samples -> words.add(Numbers.plain(samples.doubleValue(), 1) + " samples"));
    m.arrivals()
        .get(0)
        .levelDb()
        .flatMap(strongest -> copy.levelDb().map(strongest::subtract))
        .ifPresent(weaker -> words.add(weaker(weaker)));
    copy.polarity().ifPresent(polarity -> words.add("polarity " + polarity));
    sheet.row("also heard", String.join(", ", words));
  }

  private static String weaker(BigDecimal db) {
    return Numbers.plain(db.abs().doubleValue(), 1)
        + (db.signum() < 0 ? " dB stronger" : " dB weaker");
  }

  private void finding(FindingRecord finding) {
    finding.tell(sheet);
    if (is(finding, FindingCode.CLOCKS_NOT_LOCKED)) {
      comparison
          .flatMap(ComparisonRecord::towardsLimit)
          .ifPresent(limit -> sheet.row("  limit", limit.text()));
    }
  }

  /** What was looked at and found in order; nothing is called clean that wasn't looked at. */
  private List<String> clean(MeasurementRecord m) {
    List<String> clean = new ArrayList<>();
    if (m.polarity().equals(Optional.of(Polarity.NORMAL.label()))) {
      clean.add("polarity normal");
    }
    if (!found(FindingCode.CLIPPED)) {
      clean.add("not clipped");
    }
    if (m.clockDriftPpm().isPresent() && !found(FindingCode.CLOCKS_NOT_LOCKED)) {
      clean.add("clocks locked" + within(m));
    }
    return clean;
  }

  /** What a drift that went unnoticed could be at most. */
  private static String within(MeasurementRecord m) {
    return m.clockDriftUncertaintyPpm()
        .map(u -> m.clockDriftPpm().orElseThrow().abs().add(u))
        .map(most -> " within " + Numbers.roundedUp(most.doubleValue(), 2).toPlainString() + " ppm")
        .orElse("");
  }

  private boolean found(FindingCode code) {
    return findings.stream().anyMatch(finding -> is(finding, code));
  }

  private static boolean is(FindingRecord finding, FindingCode code) {
    return finding.code().equals(Optional.of(code.label()));
  }
}
