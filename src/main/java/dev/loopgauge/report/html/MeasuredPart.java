package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Fields;
import dev.loopgauge.report.form.Numbers;
import j2html.tags.DomContent;
import java.util.Optional;

/** The measured delay beside the predicted one. */
final class MeasuredPart {
  private MeasuredPart() {}

  /** The table. */
  static DomContent of(PathStory path, Delay delay) {
    Grid grid = new Grid("Measured against budget, over the loop", "Delay", "samples", "ms");
    grid.row("measured", delay.inSamples(), delay.inMs());
    path.latest().fields().part("comparison").ifPresent(compared -> compare(grid, compared, delay));
    return grid.html();
  }

  private static void compare(Grid grid, Fields comparison, Delay delay) {
    Optional<Double> predicted = comparison.number("predictedSamples");
    Optional<Double> difference = comparison.number("differenceSamples");
    if (predicted.isPresent() && difference.isPresent()) {
      double tolerance = comparison.number("toleranceSamples").orElse(0.0);
      grid.row(
          "budget",
          Numbers.brief(predicted.get(), 2)
              + (tolerance > 0 ? " ± " + Numbers.brief(tolerance, 2) : ""),
          Numbers.plain(delay.toMs(predicted.get()), 3));
      grid.row(
          "difference",
          Numbers.signed(difference.get(), delay.sampleDecimals()),
          Numbers.signed(delay.toMs(difference.get()), 3));
    }
  }
}
