package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.estimate.Method;
import dev.loopgauge.verify.Comparison;
import java.util.Optional;

/** The first line of a measurement: the verdict in words. */
final class Verdicts {
  private Verdicts() {}

  static String line(Measurement measurement, Optional<Comparison> comparison) {
    if (measurement.ambiguous()) {
      return "UNDECIDED: more than one delay could be meant.";
    }
    return comparison.map(c -> compared(measurement, c)).orElseGet(() -> measured(measurement));
  }

  private static String measured(Measurement m) {
    String figure = Figures.inWords(m.delay(), Figures.sampleDecimals(m));
    String card = m.method() == Method.UNCALIBRATED ? ", the sound card's own delay included" : "";
    return m.delay().samples() < 0
        ? "MEASURED: the return leads the reference by " + figure + card + "."
        : "MEASURED: the return is " + figure + " late" + card + ".";
  }

  private static String compared(Measurement m, Comparison c) {
    String by = Figures.inWords(c.difference(), Math.min(1, Figures.sampleDecimals(m)));
    return switch (c.verdict()) {
      case WITHIN -> "WITHIN: " + c.path() + " is as late as its budget says.";
      case LATE -> "LATE by " + by + ": " + c.path() + " is later than its budget.";
      case EARLY -> "EARLY by " + by + ": " + c.path() + " is less late than its budget.";
      case UNDECIDED ->
          m.method() == Method.UNCALIBRATED
              ? "UNDECIDED: the sound card's own delay is in the reading."
              : "UNDECIDED: the reading lies too near the limit of " + c.path() + " to call it.";
    };
  }
}
