package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.measured.ComparisonRecord;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.MeasurementRecord;
import dev.loopgauge.report.measured.MeasurementRecord.ArrivalRecord;
import dev.loopgauge.report.measured.ResponseRecord;
import dev.loopgauge.report.plot.Graph;
import dev.loopgauge.report.plot.Graph.Form;
import dev.loopgauge.report.plot.Graph.Point;
import dev.loopgauge.report.plot.Graph.Stroke;
import dev.loopgauge.report.plot.GraphPlot;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What came back around the arrival: how strongly the return is the stimulus, delay by delay. */
final class ResponsePart {
  /** What lies further below the strongest arrival is noise to the eye, in dB. */
  private static final double FLOOR_DB = -70;

  /** More points than a plot has pixels tell nothing. */
  private static final int MOST_POINTS = 400;

  private final Optional<ComparisonRecord> comparison;
  private final List<ArrivalRecord> arrivals;
  private final ShownDelay delay;
  private final Graph graph =
      new Graph("delay, milliseconds", "level against the strongest arrival, dB");
  private final Grid grid = new Grid("What arrives", "Arrival", "ms", "samples", "level, dB");

  private ResponsePart(Optional<ComparisonRecord> comparison, MeasurementRecord measurement) {
    this.comparison = comparison;
    this.arrivals = measurement.arrivals();
    this.delay = measurement.delay();
    graph.upright(
        delay.ms(),
        delay.toMs(delay.uncertaintySamples()),
        "measured " + ms(delay.ms()),
        Stroke.WHOLE);
    comparison.ifPresent(this::predicted);
    arrivals();
  }

  /** The figure; empty for a document without a response. */
  static Optional<PlotFigure> of(MeasurementDocument document, MeasurementRecord measurement) {
    List<Point> curve =
        document.response().map(r -> curve(r, measurement.delay())).orElse(List.of());
    if (curve.size() < 2) {
      return Optional.empty();
    }
    ResponsePart part = new ResponsePart(document.comparison(), measurement);
    part.graph.line(curve, Stroke.WHOLE);
    return Optional.of(
        new PlotFigure(
            new GraphPlot(part.graph),
            "What came back, over the delay",
            part.description(),
            part.grid));
  }

  /** The envelope; of several samples to a pixel the highest counts, so that no peak is lost. */
  private static List<Point> curve(ResponseRecord response, ShownDelay delay) {
    List<Double> levels = response.levelsDb().stream().map(BigDecimal::doubleValue).toList();
    double first = response.firstSamples().map(BigDecimal::doubleValue).orElse(0.0);
    double step = response.stepSamples().map(BigDecimal::doubleValue).orElse(1.0);
    int bin = Math.max(1, (levels.size() + MOST_POINTS - 1) / MOST_POINTS);
    List<Point> curve = new ArrayList<>();
    for (int i = 0; i < levels.size(); i += bin) {
      int highest = i;
      for (int j = i; j < Math.min(i + bin, levels.size()); j++) {
        highest = levels.get(j) > levels.get(highest) ? j : highest;
      }
      double level = Math.max(levels.get(highest), FLOOR_DB);
      curve.add(new Point(delay.toMs(first + highest * step), level, 0));
    }
    return curve;
  }

  private void predicted(ComparisonRecord compared) {
    double samples = compared.predictedSamples().doubleValue();
    double tolerance = compared.toleranceSamples().map(BigDecimal::doubleValue).orElse(0.0);
    double ms = delay.toMs(samples);
    graph.upright(ms, delay.toMs(tolerance), "budget " + ms(ms), Stroke.DASHED);
    grid.row("budget", Numbers.plain(ms, 3), Numbers.brief(samples, 2), "");
  }

  private void arrivals() {
    double strongest =
        arrivals.stream()
            .flatMap(arrival -> arrival.levelDb().stream())
            .mapToDouble(BigDecimal::doubleValue)
            .max()
            .orElse(0);
    List<Point> others = new ArrayList<>();
    for (ArrivalRecord arrival : arrivals) {
      double samples = arrival.delaySamples().map(BigDecimal::doubleValue).orElse(delay.samples());
      double level = arrival.levelDb().map(BigDecimal::doubleValue).orElse(strongest) - strongest;
      boolean measured = Math.abs(samples - delay.samples()) < 1e-3;
      String name = measured ? "measured" : Character.toString('A' + others.size() % 26);
      if (!measured) {
        others.add(new Point(delay.toMs(samples), Math.max(level, FLOOR_DB), 0));
        graph.note(delay.toMs(samples), level, name);
      }
      String turned = "inverted".equals(arrival.polarity().orElse("")) ? ", inverted" : "";
      grid.row(
          name + turned,
          Numbers.plain(delay.toMs(samples), 3),
          Numbers.plain(samples, Math.min(2, delay.sampleDecimals())),
          Numbers.plain(level, 1));
    }
    graph.points(others, Form.TRIANGLE);
  }

  private String description() {
    int others = arrivals.size() - 1;
    String arrivals =
        others <= 0
            ? "There is one arrival."
            : others == 1
                ? "Another arrival is marked A."
                : "The " + others + " other arrivals are marked with letters.";
    String budget =
        comparison.isPresent() ? ", the dashed one the budget with its tolerance. " : ". ";
    return "The line is the envelope of the correlation between return and reference. The upright"
        + (" whole line is the measured delay" + budget + arrivals);
  }

  private static String ms(double ms) {
    return Numbers.plain(ms, 2) + " ms";
  }
}
