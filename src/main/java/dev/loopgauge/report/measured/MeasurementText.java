package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.Arrival;
import dev.loopgauge.estimate.ClockDrift;
import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.estimate.Finding;
import dev.loopgauge.estimate.FindingCode;
import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.estimate.Polarity;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.Explanation;
import java.util.ArrayList;
import java.util.List;

/** The measurement document as text: the verdict in words first, then what it rests on. */
final class MeasurementText {
  private static final int MOST_COPIES = 3;
  private static final int MOST_EXPLANATIONS = 4;

  private final MeasurementDocument document;
  private final Sheet sheet = new Sheet();

  MeasurementText(MeasurementDocument document) {
    this.document = document;
    if (document.estimate() instanceof Estimate.Found found) {
      found(found.measurement());
    } else {
      refused();
    }
    document.notes().forEach(note -> sheet.row("note", note));
  }

  private void refused() {
    List<Finding> refusing =
        document.estimate().findings().stream().filter(Finding::refuses).toList();
    sheet.line("No trustworthy reading: " + sentence(refusing.get(0).text()));
    sheet.row("try", refusing.get(0).hint());
    document.estimate().findings().stream()
        .filter(finding -> !finding.equals(refusing.get(0)))
        .forEach(this::finding);
  }

  private void found(Measurement measurement) {
    sheet.line(Verdicts.line(measurement, document.comparison()));
    sheet.row("measured", Figures.measured(measurement));
    document.comparison().ifPresent(comparison -> compared(measurement, comparison));
    document.hostCheck().ifPresent(check -> sheet.row("host check", HostCheckLines.text(check)));
    sheet.row("how", how(measurement));
    measurement.arrivals().stream()
        .skip(1)
        .limit(MOST_COPIES)
        .forEach(copy -> sheet.row("also heard", copy(measurement, copy)));
    document.estimate().findings().forEach(this::finding);
    sheet.row("also clean", String.join(", ", clean(measurement)));
  }

  private void compared(Measurement measurement, Comparison comparison) {
    sheet.row("budget", Figures.predicted(comparison));
    sheet.row("difference", Figures.difference(measurement, comparison));
    String label = "most likely";
    List<Explanation> explanations = comparison.explanations();
    for (Explanation explanation : explanations.stream().limit(MOST_EXPLANATIONS).toList()) {
      sheet.row(
          explanation.fits() ? label : "cause",
          explanation.text() + Figures.leaves(measurement, explanation));
      label = "or";
    }
    if (explanations.size() > MOST_EXPLANATIONS) {
      sheet.row("or", (explanations.size() - MOST_EXPLANATIONS) + " more, which --json lists");
    }
    comparison.tellApart().ifPresent(extra -> sheet.row("to tell", extra.text()));
  }

  private static String how(Measurement measurement) {
    String repeats = measurement.repeats() == 1 ? "1 reading" : measurement.repeats() + " readings";
    return String.join(
        ", ",
        measurement.method().label(),
        repeats,
        againstNoise(Numbers.tellableDb(measurement.signalToNoiseDb())),
        "level " + Numbers.plain(Numbers.tellableDb(measurement.levelDb()), 1) + " dB");
  }

  private static String againstNoise(double db) {
    return Numbers.plain(Math.abs(db), 0) + (db < 0 ? " dB below noise" : " dB above noise");
  }

  private static String sentence(String text) {
    return text.endsWith(".") ? text : text + ".";
  }

  private static String copy(Measurement measurement, Arrival copy) {
    double weaker = measurement.arrivals().get(0).levelDb() - copy.levelDb();
    return Numbers.plain(copy.delaySamples(), 1)
        + " samples, "
        + Numbers.plain(Math.abs(weaker), 1)
        + (weaker < 0 ? " dB stronger" : " dB weaker")
        + ", polarity "
        + copy.polarity().label();
  }

  private void finding(Finding finding) {
    sheet.row("finding", finding.text());
    sheet.row("  try", finding.hint());
    if (finding.code() == FindingCode.CLOCKS_NOT_LOCKED) {
      document
          .comparison()
          .flatMap(Comparison::towardsLimit)
          .ifPresent(limit -> sheet.row("  limit", limit.text()));
    }
  }

  /** What was looked at and found in order; nothing is called clean that wasn't looked at. */
  private List<String> clean(Measurement measurement) {
    List<String> clean = new ArrayList<>();
    if (measurement.polarity() == Polarity.NORMAL) {
      clean.add("polarity normal");
    }
    if (!found(FindingCode.CLIPPED)) {
      clean.add("not clipped");
    }
    if (!found(FindingCode.CLOCKS_NOT_LOCKED)) {
      measurement.clockDrift().ifPresent(drift -> clean.add("clocks locked " + within(drift)));
    }
    return clean;
  }

  /** What a drift that went unnoticed could be at most. */
  private static String within(ClockDrift drift) {
    double most = Math.abs(drift.ppm()) + drift.uncertaintyPpm();
    return "within " + Numbers.roundedUp(most, 2).toPlainString() + " ppm";
  }

  private boolean found(FindingCode code) {
    return document.estimate().findings().stream().anyMatch(finding -> finding.code() == code);
  }

  /** All of it. */
  @Override
  public String toString() {
    return sheet.toString();
  }
}
