package dev.loopgauge.report.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.report.plot.Bars.Bar;
import dev.loopgauge.report.plot.Bars.Kind;
import dev.loopgauge.report.plot.Bars.Mark;
import dev.loopgauge.report.plot.Graph.Form;
import dev.loopgauge.report.plot.Graph.Point;
import dev.loopgauge.report.plot.Graph.Stroke;
import dev.loopgauge.report.plot.Lanes.Group;
import dev.loopgauge.report.plot.Lanes.Part;
import dev.loopgauge.report.plot.Lanes.Row;
import dev.loopgauge.report.plot.Lanes.Segment;
import dev.loopgauge.report.plot.Lanes.Sign;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.jfree.chart.JFreeChart;
import org.junit.jupiter.api.Test;

class PlotTest {
  private static Plot bars(String name) {
    return new Bars(
        "milliseconds",
        List.of(
            new Bar(Kind.PART, name, 0, 2, "2.00 ms"),
            new Bar(Kind.MEASURED, "measured", 0, 2.5, "2.50 ms")),
        List.of(new Mark("limit 3 ms", 3, true)));
  }

  private static Plot graph() {
    return new GraphPlot(
        new Graph("block size, samples", "delay, milliseconds")
            .line(List.of(new Point(32, 5, 0), new Point(1024, 47.25, 0)), Stroke.WHOLE)
            .points(List.of(new Point(64, 7, 0.5)), Form.TRIANGLE)
            .upright(512, 10, "measured", Stroke.WHOLE)
            .note(64, 7, "A"));
  }

  private static String drawn(Plot plot) {
    return plot.svg(Size.NARROW, "it", "its title", "its description");
  }

  @Test
  void saysWhatItIsToThoseWhoCannotSeeIt() {
    String svg = drawn(graph());
    assertTrue(svg.contains("role='img'"), svg);
    assertTrue(svg.contains("aria-labelledby='it-t it-d'"), svg);
    assertTrue(svg.contains("<title id='it-t'>its title</title>"), svg);
    assertTrue(svg.contains("<desc id='it-d'>its description</desc>"), svg);
  }

  @Test
  void leavesItsColoursAndFontsToThePage() {
    for (Plot plot : List.of(bars("desk"), graph())) {
      String svg = drawn(plot);
      assertFalse(svg.contains("rgb("), svg);
      assertFalse(svg.contains("font-family"), svg);
      assertTrue(svg.contains("var(--measured)"), svg);
    }
  }

  @Test
  void keepsTextAsText() {
    String svg = drawn(bars("desk"));
    assertTrue(svg.contains(">desk  2.00 ms</text>"), svg);
    assertTrue(svg.contains(">limit 3 ms</text>"), svg);
    assertTrue(svg.contains(">milliseconds</text>"), svg);
  }

  private static Plot timeline(double airMs) {
    Row row =
        new Row(
            Sign.BAD,
            "vocal-house",
            "5.50 ms",
            List.of(
                new Segment(Part.CONVERTER, 0, 1),
                new Segment(Part.HOST, 1, 5),
                new Segment(Part.AIR, 5, 5 + airMs)),
            OptionalDouble.of(5.5),
            OptionalDouble.of(8));
    return new Timeline(new Lanes(List.of(new Group("house, limit 8 ms", List.of(row)))));
  }

  @Test
  void tellsWhoHearsWhatWhenByColourShapeAndText() {
    String svg = drawn(timeline(3));
    for (String text :
        List.of("vocal-house", "house, limit 8 ms", "5.50 ms", "measured", "limit", "air")) {
      assertTrue(svg.contains(">" + text + "</text>"), text + " in " + svg);
    }
    for (String ink : List.of("converter", "host", "air", "bad")) {
      assertTrue(svg.contains("var(--" + ink + ")"), ink + " in " + svg);
    }
    assertFalse(svg.contains("rgb("), svg);
  }

  @Test
  void letsLongAirRunOutOfThePictureSoThatStagesCanBeSeen() {
    Lanes near = lanes(3);
    Lanes far = lanes(200);
    assertEquals(8, near.highestMs(), 1e-9);
    assertEquals(10, far.highestMs(), 1e-9);
  }

  private static Lanes lanes(double airMs) {
    Row row =
        new Row(
            Sign.GOOD,
            "x",
            "",
            List.of(new Segment(Part.HOST, 0, 5), new Segment(Part.AIR, 5, 5 + airMs)),
            OptionalDouble.empty(),
            OptionalDouble.of(8));
    return new Lanes(List.of(new Group("house", List.of(row))));
  }

  @Test
  void spansAtLeastWhatItIsTold() {
    Graph graph =
        new Graph("octave band, Hz", "delay, samples")
            .points(List.of(new Point(0, 275.4, 0.001), new Point(1, 275.41, 0.001)), Form.ROUND);
    assertTrue(Extent.of(graph).height() < 0.05);
    assertTrue(Extent.of(graph.spanningAtLeast(1)).height() >= 1);
  }

  @Test
  void writesNumbersPlainInEveryLocale() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG"));
      String svg = drawn(graph());
      assertTrue(svg.contains(">1000</text>") || svg.contains(">500</text>"), svg);
      assertFalse(svg.matches("(?s).*\\p{InArabic}.*"), svg);
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void showsMarkupAsText() {
    String svg = drawn(bars("<b>&'x'"));
    assertFalse(svg.contains("<b>"), svg);
    assertTrue(svg.contains("&lt;b&gt;&amp;"), svg);
  }

  @Test
  void shortensLongNames() {
    assertEquals("x".repeat(23) + "…", Marking.of("x".repeat(500)));
    assertEquals("a b", Marking.of("a\u202e\u0000b"));
  }

  @Test
  void isTheSameEachTime() {
    assertEquals(drawn(graph()), drawn(graph()));
  }

  @Test
  void drawsWhatHasNoHeight() {
    Graph flat =
        new Graph("reading", "delay, samples")
            .points(List.of(new Point(1, 595, 0), new Point(2, 595, 0)), Form.ROUND);
    assertTrue(drawn(new GraphPlot(flat)).contains(">595</text>"));
    assertTrue(drawn(new GraphPlot(new Graph("x", "y"))).contains("<svg"));
  }

  @Test
  void saysSoWhenThereAreNoFonts() {
    Plot fontless =
        new ChartPlot() {
          @Override
          JFreeChart chart(Size size) {
            throw new InternalError("Fontconfig head is null");
          }

          @Override
          int height(Size size) {
            return 100;
          }
        };
    assertThrows(UndrawableException.class, () -> drawn(fontless));
  }
}
