package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Numbers;
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
   * @param ambiguous whether another arrival may be the path
   */
  static String line(
      ShownDelay delay,
      boolean uncalibrated,
      boolean ambiguous,
      Optional<ComparisonRecord> comparison) {
    if (ambiguous) {
      return "UNDECIDED: two arrivals almost equally loud. Which one is your path?";
    }
    return comparison.isPresent()
        ? compared(delay, uncalibrated, comparison.get())
        : measured(delay, uncalibrated);
  }

  private static String measured(ShownDelay delay, boolean uncalibrated) {
    String figure = Figures.inWords(delay.samples(), delay, delay.sampleDecimals());
    String card = uncalibrated ? ", the sound card's own delay included" : "";
    return delay.samples() < 0
        ? "MEASURED: the return comes " + figure + " before the reference" + card + "."
        : "MEASURED: the return is " + figure + " late" + card + ".";
  }

  private static String compared(ShownDelay delay, boolean uncalibrated, ComparisonRecord c) {
    double difference = c.differenceSamples().doubleValue();
    String by = Figures.inWords(difference, delay, Math.min(1, delay.sampleDecimals()));
    return switch (c.verdict().orElse(Verdict.UNDECIDED)) {
      case WITHIN ->
          "WITHIN: " + c.pathName() + " matches its budget (" + budgetMs(c, delay) + ").";
      case LATE -> "LATE by " + by + ": " + c.pathName() + " is slower than budgeted.";
      case EARLY -> "EARLY by " + by + ": " + c.pathName() + " is faster than budgeted.";
      case UNDECIDED ->
          uncalibrated
              ? "UNDECIDED: the sound card's own delay is in the reading."
              : coarse(c.pathName(), delay);
    };
  }

  private static String coarse(String path, ShownDelay delay) {
    String reading =
        delay.uncertaintySamples() > 0 ? "±" + delay.uncertainty() + " samples" : "the reading";
    return "UNDECIDED: " + reading + " is too coarse to tell whether " + path + " is in budget.";
  }

  private static String budgetMs(ComparisonRecord c, ShownDelay delay) {
    return Numbers.plain(delay.toMs(c.predictedSamples().doubleValue()), 2) + " ms";
  }
}
