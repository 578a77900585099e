package dev.loopgauge.report.html;

import static j2html.TagCreator.p;

import dev.loopgauge.report.form.Fields;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.plot.Graph;
import dev.loopgauge.report.plot.Graph.Form;
import dev.loopgauge.report.plot.Graph.Point;
import dev.loopgauge.report.plot.Graph.Stroke;
import dev.loopgauge.report.plot.GraphPlot;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A host's delay over its block sizes, with the line through it. */
final class SeriesPart {
  private SeriesPart() {}

  /** The section; empty for another document. */
  static Optional<Section> of(Fields document, String id) {
    Optional<Fields> fit = document.part("fit");
    List<Fields> readings =
        document.parts("readings").stream()
            .filter(reading -> reading.number("blockSize").isPresent())
            .filter(reading -> reading.number("delayMs").isPresent())
            .filter(reading -> reading.number("fittedMs").isPresent())
            .sorted(Comparator.comparing(reading -> reading.number("blockSize").orElseThrow()))
            .toList();
    if (fit.isEmpty() || readings.isEmpty()) {
      return Optional.empty();
    }
    List<DomContent> content = new ArrayList<>();
    content.add(p(sentence(fit.get())).withClass("lead"));
    content.add(figure(readings).html(id));
    if (!document.parts("notes").isEmpty()) {
      content.add(FindingsPart.of(document.parts("notes")));
    }
    return Optional.of(new Section(id + "-part", "Block sizes of the host", content));
  }

  private static String sentence(Fields fit) {
    double blocks = fit.number("blocks").orElse(0.0);
    double uncertainty = fit.number("uncertaintyBlocks").orElse(0.0);
    int decimals = uncertainty > 0 ? Numbers.decimalsFor(uncertainty, 4) : 4;
    return "%s ± %s blocks and %s samples (%s ms) that stay at every size."
        .formatted(
            Numbers.plain(blocks, decimals),
            Numbers.plainUp(uncertainty, decimals),
            Numbers.brief(fit.number("fixedSamples").orElse(0.0), 2),
            Numbers.plain(fit.number("fixedMs").orElse(0.0), 3));
  }

  private static Figure figure(List<Fields> readings) {
    Graph graph = new Graph("block size, samples", "delay, milliseconds");
    Grid grid = new Grid("Readings and the line", "Block", "measured, ms", "line, ms", "apart, ms");
    List<Point> line = new ArrayList<>();
    List<Point> kept = new ArrayList<>();
    List<Point> outliers = new ArrayList<>();
    for (Fields reading : readings) {
      double block = reading.number("blockSize").orElseThrow();
      double ms = reading.number("delayMs").orElseThrow();
      double fitted = reading.number("fittedMs").orElseThrow();
      boolean outlier = reading.is("outlier");
      line.add(new Point(block, fitted, 0));
      (outlier ? outliers : kept).add(new Point(block, ms, 0));
      if (outlier) {
        graph.note(block, ms, "outlier");
      }
      grid.row(
          Numbers.brief(block, 0) + (outlier ? ", outlier" : ""),
          Numbers.plain(ms, 3),
          Numbers.plain(fitted, 3),
          Numbers.signed(ms - fitted, 3));
    }
    graph.line(line, Stroke.DASHED).points(kept, Form.ROUND).points(outliers, Form.CROSS);
    return new Figure(
        new GraphPlot(graph),
        "Delay over the block size",
        "Points are readings; the dashed line is the fit."
            + (outliers.isEmpty() ? "" : " Crosses lie off it and were left out."),
        grid);
  }
}
