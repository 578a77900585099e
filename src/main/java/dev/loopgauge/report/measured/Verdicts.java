package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.verify.Verdict;
import java.util.Optional;

/** The first line of a measurement: the verdict in words. */
final class Verdicts {
  private Verdicts() {}

  /**
   * The line.
   *
   * @param uncalibrated whether the sound card's own delay is in the number
   * @param ambiguous whether another delay could be meant as well
   */
  static String line(
      ShownDelay delay,
      boolean uncalibrated,
      boolean ambiguous,
      Optional<ComparisonRecord> comparison) {
    if (ambiguous) {
      return "UNDECIDED: more than one delay could be meant.";
    }
    return comparison
        .map(c -> compared(delay, uncalibrated, c))
        .orElseGet(() -> measured(delay, uncalibrated));
  }

  private static String measured(ShownDelay delay, boolean uncalibrated) {
    String figure = Figures.inWords(delay.samples(), delay, delay.sampleDecimals());
    String card = uncalibrated ? ", the sound card's own delay included" : "";
    return delay.samples() < 0
        ? "MEASURED: the return leads the reference by " + figure + card + "."
        : "MEASURED: the return is " + figure + " late" + card + ".";
  }

  private static String compared(ShownDelay delay, boolean uncalibrated, ComparisonRecord c) {
    double difference = c.differenceSamples().doubleValue();
    String by = Figures.inWords(difference, delay, Math.min(1, delay.sampleDecimals()));
    return switch (c.verdict().orElse(Verdict.UNDECIDED)) {
      case WITHIN -> "WITHIN: " + c.pathName() + " is as late as its budget says.";
      case LATE -> "LATE by " + by + ": " + c.pathName() + " is later than its budget.";
      case EARLY -> "EARLY by " + by + ": " + c.pathName() + " is less late than its budget.";
      case UNDECIDED ->
          uncalibrated
              ? "UNDECIDED: the sound card's own delay is in the reading."
              : "UNDECIDED: the reading lies too near the limit of "
                  + c.pathName()
                  + " to call it.";
    };
  }
}
