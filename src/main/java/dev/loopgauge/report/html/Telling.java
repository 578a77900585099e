package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Fields;
import dev.loopgauge.report.form.Numbers;
import java.util.Optional;

/** What a measurement came to, in a sentence. */
final class Telling {
  private Telling() {}

  /** The verdict of a reading. */
  static String verdict(Reading reading) {
    Fields fields = reading.fields();
    if (reading.outcome().equals("error")) {
      return "No reading: "
          + fields.part("error").flatMap(error -> error.text("text")).orElse("unknown");
    }
    return reading.delay().map(delay -> measured(reading, delay)).orElseGet(() -> refused(fields));
  }

  private static String refused(Fields fields) {
    return "No trustworthy reading: "
        + fields.parts("findings").stream()
            .filter(finding -> finding.is("refuses"))
            .findFirst()
            .flatMap(finding -> finding.text("text"))
            .orElse("the document doesn't say why");
  }

  private static String measured(Reading reading, Delay delay) {
    Optional<Fields> comparison = reading.fields().part("comparison");
    String host =
        reading
            .fields()
            .part("hostCheck")
            .flatMap(check -> check.text("text"))
            .map(text -> " Host check: " + text + ".")
            .orElse("");
    return comparison.map(c -> compared(c, delay)).orElseGet(() -> alone(reading, delay)) + host;
  }

  private static String alone(Reading reading, Delay delay) {
    if (reading.outcome().equals("undecided")) {
      return "Undecided: more than one delay could be meant.";
    }
    String figure = amount(delay.samples(), delay);
    return delay.samples() < 0
        ? "Measured: the return leads the reference by " + figure + "."
        : "Measured: the return is " + figure + " late.";
  }

  private static String compared(Fields comparison, Delay delay) {
    String by = amount(comparison.number("differenceSamples").orElse(0.0), delay);
    return switch (comparison.text("verdict").orElse("")) {
      case "within" -> "Within: as late as its budget says.";
      case "late" -> "Late by " + by + ": later than its budget.";
      case "early" -> "Early by " + by + ": less late than its budget.";
      default -> "Undecided: the reading doesn't tell whether it keeps its budget.";
    };
  }

  /** {@code 128 samples (2.67 ms)}, without a sign. */
  private static String amount(double samples, Delay delay) {
    return Numbers.brief(Math.abs(samples), Math.min(1, delay.sampleDecimals()))
        + " samples ("
        + Numbers.plain(Math.abs(delay.toMs(samples)), 2)
        + " ms)";
  }
}
