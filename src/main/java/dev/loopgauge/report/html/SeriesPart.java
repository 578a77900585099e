package dev.loopgauge.report.html;

import static j2html.TagCreator.p;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.plot.Graph;
import dev.loopgauge.report.plot.Graph.Form;
import dev.loopgauge.report.plot.Graph.Point;
import dev.loopgauge.report.plot.Graph.Stroke;
import dev.loopgauge.report.plot.GraphPlot;
import dev.loopgauge.report.series.FitRecord;
import dev.loopgauge.report.series.SeriesDocument;
import dev.loopgauge.report.series.SeriesDocument.ReadingRecord;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A host's delay over its block sizes, with the line through it. */
final class SeriesPart {
  private SeriesPart() {}

  /** The section; empty for a series without readings. */
  static Optional<Section> of(SeriesDocument document, String id) {
    List<ReadingRecord> readings =
        document.readings().stream()
            .sorted(Comparator.comparing(ReadingRecord::blockSize))
            .toList();
    if (readings.isEmpty()) {
      return Optional.empty();
    }
    List<DomContent> content = new ArrayList<>();
    content.add(p(sentence(document.fit())).withClass("lead"));
    content.add(figure(readings).html(id));
    if (!document.notes().isEmpty()) {
      content.add(FindingsPart.of(document.notes()));
    }
    return Optional.of(new Section(id + "-part", "Block sizes of the host", content));
  }

  private static String sentence(FitRecord fit) {
    return fit.blocksInWords()
        + (" blocks and " + Numbers.brief(fit.fixedSamples().doubleValue(), 2) + " samples")
        + fit.fixedMs().map(ms -> " (" + Numbers.plain(ms.doubleValue(), 3) + " ms)").orElse("")
        + " that stay at every size.";
  }

  private static PlotFigure figure(List<ReadingRecord> readings) {
    Graph graph = new Graph("block size, samples", "delay, milliseconds");
    Grid grid = new Grid("Readings and the line", "Block", "measured, ms", "line, ms", "apart, ms");
    List<Point> line = new ArrayList<>();
    List<Point> kept = new ArrayList<>();
    List<Point> outliers = new ArrayList<>();
    for (ReadingRecord reading : readings) {
      int block = reading.blockSize();
      double ms = reading.delayMs().doubleValue();
      double fitted = reading.fittedMs().doubleValue();
      boolean outlier = reading.isOutlier();
      line.add(new Point(block, fitted, 0));
      (outlier ? outliers : kept).add(new Point(block, ms, 0));
      if (outlier) {
        graph.note(block, ms, "outlier");
      }
      grid.row(
          block + (outlier ? ", outlier" : ""),
          Numbers.plain(ms, 3),
          Numbers.plain(fitted, 3),
          Numbers.signed(ms - fitted, 3));
    }
    graph.line(line, Stroke.DASHED).points(kept, Form.ROUND).points(outliers, Form.CROSS);
    return new PlotFigure(
        new GraphPlot(graph),
        "Delay over the block size",
        "Points are readings; the dashed line is the fit."
            + (outliers.isEmpty() ? "" : " Crosses lie off it and were left out."),
        grid);
  }
}
