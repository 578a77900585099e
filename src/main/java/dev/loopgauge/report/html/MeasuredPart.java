package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.measured.ComparisonRecord;
import dev.loopgauge.report.measured.MeasurementRecord;
import j2html.tags.DomContent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The measured delay beside the predicted one. */
final class MeasuredPart {
  private MeasuredPart() {}

  /** The table. */
  static DomContent of(PathStory path, ShownDelay delay) {
    Grid grid = new Grid("Measured against budget, over the loop", "Delay", "samples", "ms");
    grid.row("measured", delay.inSamples(), delay.inMs());
    path.latest().comparison().ifPresent(compared -> compare(grid, compared, delay));
    return grid.html();
  }

  /** What was told beside the delay, in a sentence. */
  static String beside(MeasurementRecord measurement) {
    List<String> told = new ArrayList<>();
    add(told, "level of the return ", measurement.levelDb(), " dB");
    add(told, "", measurement.signalToNoiseDb(), " dB above the noise");
    add(told, "clock drift ", measurement.clockDriftPpm(), " ppm");
    measurement.polarity().ifPresent(polarity -> told.add("polarity " + polarity));
    return told.isEmpty() ? "" : "Beside it: " + String.join(", ", told) + ".";
  }

  private static void add(List<String> told, String name, Optional<BigDecimal> value, String unit) {
    value.ifPresent(known -> told.add(name + Numbers.brief(known.doubleValue(), 2) + unit));
  }

  private static void compare(Grid grid, ComparisonRecord comparison, ShownDelay delay) {
    double predicted = comparison.predictedSamples().doubleValue();
    double difference = comparison.differenceSamples().doubleValue();
    String tolerance =
        comparison
            .toleranceSamples()
            .filter(samples -> samples.signum() > 0)
            .map(samples -> " ± " + Numbers.brief(samples.doubleValue(), 2))
            .orElse("");
    grid.row(
        "budget", Numbers.brief(predicted, 2) + tolerance, Numbers.plain(delay.toMs(predicted), 3));
    grid.row(
        "difference",
        Numbers.signed(difference, delay.sampleDecimals()),
        Numbers.signed(delay.toMs(difference), 3));
  }
}
