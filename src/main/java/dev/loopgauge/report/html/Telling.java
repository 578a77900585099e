package dev.loopgauge.report.html;

import dev.loopgauge.report.form.ErrorDocument;
import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.measured.ComparisonRecord;
import dev.loopgauge.report.measured.HostCheckRecord;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.verify.Verdict;

/** What a measurement came to, in a sentence. */
final class Telling {
  private Telling() {}

  /** The verdict of a reading. */
  static String verdict(ReadDocument reading) {
    return reading
        .as(ErrorDocument.class)
        .map(error -> "No reading: " + error.error().text())
        .or(() -> reading.delay().map(delay -> measured(reading, delay)))
        .orElseGet(() -> refused(reading));
  }

  private static String refused(ReadDocument reading) {
    return "No trustworthy reading: "
        + reading.findings().stream()
            .filter(FindingRecord::isRefusal)
            .findFirst()
            .flatMap(FindingRecord::text)
            .orElse("the document doesn't say why");
  }

  private static String measured(ReadDocument reading, ShownDelay delay) {
    String host =
        reading
            .measured()
            .flatMap(MeasurementDocument::hostCheck)
            .flatMap(HostCheckRecord::text)
            .map(text -> " Host check: " + text + ".")
            .orElse("");
    return reading.comparison().map(c -> compared(c, delay)).orElseGet(() -> alone(reading, delay))
        + host;
  }

  private static String alone(ReadDocument reading, ShownDelay delay) {
    if (reading.outcome().equals("undecided")) {
      return "Undecided: two arrivals almost equally loud. Which one is the path?";
    }
    String figure = amount(delay.samples(), delay);
    return delay.samples() < 0
        ? "Measured: the return comes " + figure + " before the reference."
        : "Measured: the return is " + figure + " late.";
  }

  private static String compared(ComparisonRecord comparison, ShownDelay delay) {
    String by = amount(comparison.differenceSamples().doubleValue(), delay);
    return switch (comparison.verdict().orElse(Verdict.UNDECIDED)) {
      case WITHIN -> "Within: matches its budget.";
      case LATE -> "Late by " + by + ": slower than budgeted.";
      case EARLY -> "Early by " + by + ": faster than budgeted.";
      case UNDECIDED ->
          "Undecided: the reading is too coarse to tell whether the path is in budget.";
    };
  }

  /** {@code 128 samples (2.67 ms)}, without a sign. */
  private static String amount(double samples, ShownDelay delay) {
    return Numbers.brief(Math.abs(samples), Math.min(1, delay.sampleDecimals()))
        + " samples ("
        + Numbers.plain(Math.abs(delay.toMs(samples)), 2)
        + " ms)";
  }
}
