package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Polarity;
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
  private static final int MOST_ARRIVALS = 3;
  private static final int MOST_EXPLANATIONS = 4;

  /** Tells it. */
  void tell(
      Optional<MeasurementRecord> measurement,
      Optional<HostCheckRecord> hostCheck,
      Optional<Headline> headline) {
    if (headline.isPresent()) {
      sheet.line(headline.get().line());
    }
    if (measurement.isPresent()) {
      found(measurement.get(), hostCheck);
    } else {
      refused();
    }
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
    findings(others);
  }

  private void findings(List<FindingRecord> all) {
    for (FindingRecord finding : all) {
      finding(finding);
    }
  }

  private void found(MeasurementRecord m, Optional<HostCheckRecord> hostCheck) {
    sheet.row("measured", Figures.measured(m.delay()));
    if (m.isFiltered()) {
      sheet.row("no filter", Figures.measured(m.budgeted()));
    }
    if (comparison.isPresent()) {
      compared(m, comparison.get());
    }
    if (hostCheck.isPresent() && hostCheck.get().text().isPresent()) {
      sheet.row("host check", hostCheck.get().text().get());
    }
    sheet.row("how", how(m));
    for (int i = 1; i < Math.min(m.arrivals().size(), 1 + MOST_ARRIVALS); i++) {
      copy(m, m.arrivals().get(i));
    }
    findings(findings);
    List<String> clean = clean(m);
    if (!clean.isEmpty()) {
      sheet.row("also clean", String.join(", ", clean));
    }
  }

  private void compared(MeasurementRecord m, ComparisonRecord c) {
    sheet.row("budget", Figures.predicted(c, m.budgeted()));
    Optional<String> allowance = Figures.allowance(c);
    if (allowance.isPresent()) {
      sheet.row("", allowance.get());
    }
    sheet.row("difference", Figures.difference(c, m.budgeted()));
    int told = Math.min(MOST_EXPLANATIONS, c.explanations().size());
    String label = isTied(c) ? "either" : "most likely";
    for (ExplanationRecord explanation : c.explanations().subList(0, told)) {
      sheet.row(explanation.fits() ? label : "cause", Figures.told(explanation, m.budgeted()));
      label = "or";
    }
    if (told < c.explanations().size()) {
      sheet.row("or", (c.explanations().size() - told) + " more, which --json lists");
    }
    if (c.tellApart().isPresent() && c.tellApart().get().text().isPresent()) {
      sheet.row("to tell", c.tellApart().get().text().get());
    }
  }

  private static boolean isTied(ComparisonRecord c) {
    for (ExplanationRecord explanation : c.explanations()) {
      if (explanation.ties().orElse(false)) {
        return true;
      }
    }
    return false;
  }

  private static String how(MeasurementRecord m) {
    List<String> how = new ArrayList<>();
    if (m.method().isPresent()) {
      how.add(m.method().get());
    }
    if (m.repeats().isPresent()) {
      int repeats = m.repeats().get();
      how.add(repeats == 1 ? "1 reading" : repeats + " readings");
    }
    if (m.signalToNoiseDb().isPresent()) {
      how.add(againstNoise(m.signalToNoiseDb().get().doubleValue()));
    }
    if (m.levelDb().isPresent()) {
      how.add("level " + Numbers.plain(m.levelDb().get().doubleValue(), 1) + " dB");
    }
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
    if (m.clockDriftUncertaintyPpm().isEmpty()) {
      return "";
    }
    BigDecimal most = m.clockDriftPpm().orElseThrow().abs().add(m.clockDriftUncertaintyPpm().get());
    return " within " + Numbers.roundedUp(most.doubleValue(), 2).toPlainString() + " ppm";
  }

  private boolean found(FindingCode code) {
    for (FindingRecord finding : findings) {
      if (is(finding, code)) {
        return true;
      }
    }
    return false;
  }

  private static boolean is(FindingRecord finding, FindingCode code) {
    return finding.code().equals(Optional.of(code.label()));
  }
}
