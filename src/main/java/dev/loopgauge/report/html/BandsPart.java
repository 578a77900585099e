package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.measured.MeasurementRecord;
import dev.loopgauge.report.measured.MeasurementRecord.BandRecord;
import dev.loopgauge.report.plot.Graph;
import dev.loopgauge.report.plot.Graph.Form;
import dev.loopgauge.report.plot.Graph.Point;
import dev.loopgauge.report.plot.GraphPlot;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The delay in each octave band. */
final class BandsPart {
  private BandsPart() {}

  /** The figure; empty where there are no bands. */
  static Optional<PlotFigure> of(MeasurementRecord measurement) {
    if (measurement.bands().isEmpty()) {
      return Optional.empty();
    }
    ShownDelay delay = measurement.delay();
    Graph graph = new Graph("octave band, Hz", "delay, samples");
    Grid grid = new Grid("Delay by octave band", "Hz", "samples", "±", "ms");
    List<Point> points = new ArrayList<>();
    for (BandRecord band : measurement.bands()) {
      int at = points.size();
      double samples = band.delaySamples().doubleValue();
      double uncertainty = band.uncertaintySamples().map(BigDecimal::doubleValue).orElse(0.0);
      String hertz = Numbers.brief(band.centreHz().doubleValue(), 1);
      int decimals = uncertainty > 0 ? Numbers.decimalsFor(uncertainty, 3) : 2;
      points.add(new Point(at, samples, delay.uncalibrated() ? 0 : uncertainty));
      graph.name(at, hertz);
      grid.row(
          hertz,
          Numbers.plain(samples, decimals),
          delay.uncalibrated() ? "-" : Numbers.plainUp(uncertainty, decimals),
          Numbers.plain(delay.toMs(samples), 3));
    }
    graph.points(points, Form.ROUND).level(delay.samples(), 0).spanningAtLeast(1);
    return Optional.of(
        new PlotFigure(
            new GraphPlot(graph),
            "Delay by octave band",
            "Each point is an octave band with its uncertainty; the dashed line is the delay over"
                + " all bands.",
            grid));
  }
}
