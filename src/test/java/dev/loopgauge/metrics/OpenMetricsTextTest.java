package dev.loopgauge.metrics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.verify.watch.WatchEvent;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class OpenMetricsTextTest {
  private static final String VOCAL = "vocal-house";
  private static final String WEDGE = "wedge";

  private long nanos;
  private final WatchFigures figures = new WatchFigures(() -> nanos);

  @BeforeEach
  void begins() {
    figures.starts(List.of(VOCAL, WEDGE), "");
  }

  private List<String> text() throws IOException {
    return new String(OpenMetricsText.of(figures.now()), StandardCharsets.UTF_8).lines().toList();
  }

  private List<String> samples(String name) throws IOException {
    return text().stream().filter(line -> line.startsWith(name + "{")).toList();
  }

  @Test
  void namesUnitsAndTypesAreThoseOfOpenMetrics() throws IOException {
    figures.states(List.of(Lines.read(VOCAL, "8.7167", "0.0021"), Lines.silent(WEDGE)));
    List<String> text = text();
    for (String gauge : List.of("delay", "delay_uncertainty", "delay_age")) {
      String name = "loopgauge_path_" + gauge + "_seconds";
      assertTrue(text.contains("# TYPE " + name + " gauge"), text::toString);
      assertTrue(text.contains("# UNIT " + name + " seconds"), text::toString);
    }
    for (String counter : List.of("dropouts", "events")) {
      assertTrue(text.contains("# TYPE loopgauge_path_" + counter + " counter"), text::toString);
      assertTrue(
          text.stream().anyMatch(line -> line.startsWith("loopgauge_path_" + counter + "_total{")),
          text::toString);
    }
    assertEquals("# EOF", text.get(text.size() - 1));
  }

  @Test
  void servesTheDelayThatIsReadNow() throws IOException {
    figures.states(List.of(Lines.read(VOCAL, "8.7167", "0.0021"), Lines.silent(WEDGE)));
    assertEquals(
        List.of("loopgauge_path_delay_seconds{path=\"vocal-house\"} 0.0087167"),
        samples("loopgauge_path_delay_seconds"));
    assertEquals(
        List.of("loopgauge_path_delay_uncertainty_seconds{path=\"vocal-house\"} 2.1E-6"),
        samples("loopgauge_path_delay_uncertainty_seconds"));
    assertEquals(
        List.of("loopgauge_path_delay_age_seconds{path=\"vocal-house\"} 0.0"),
        samples("loopgauge_path_delay_age_seconds"));
  }

  @Test
  void aPathThatIsNoLongerReadHasItsAgeAlone() throws IOException {
    figures.states(List.of(Lines.read(VOCAL, "8.7167", "0.0021"), Lines.silent(WEDGE)));
    nanos = TimeUnit.SECONDS.toNanos(2);
    figures.states(List.of(Lines.silent(VOCAL), Lines.silent(WEDGE)));
    assertEquals(List.of(), samples("loopgauge_path_delay_seconds"));
    assertEquals(List.of(), samples("loopgauge_path_delay_uncertainty_seconds"));
    assertEquals(
        List.of("loopgauge_path_delay_age_seconds{path=\"vocal-house\"} 2.0"),
        samples("loopgauge_path_delay_age_seconds"));
  }

  @Test
  void aWatchThatNoLongerLooksHasNoDelays() throws IOException {
    figures.states(List.of(Lines.read(VOCAL, "8.7167", "0.0021"), Lines.silent(WEDGE)));
    nanos = WatchFigures.CURRENT_NANOS;
    assertEquals(1, samples("loopgauge_path_delay_seconds").size());
    nanos++;
    assertEquals(List.of(), samples("loopgauge_path_delay_seconds"));
    assertEquals(List.of(), samples("loopgauge_path_delay_uncertainty_seconds"));
    assertEquals(1, samples("loopgauge_path_delay_age_seconds").size());
  }

  @Test
  void countsWhatStartsByPathAndKindFromNought() throws IOException {
    assertEquals(
        List.of(
            "loopgauge_path_dropouts_total{path=\"vocal-house\"} 0.0",
            "loopgauge_path_dropouts_total{path=\"wedge\"} 0.0"),
        samples("loopgauge_path_dropouts_total"));
    assertEquals(2 * WatchFigures.KINDS.size(), samples("loopgauge_path_events_total").size());
    for (int i = 0; i < 2; i++) {
      figures.happens(Lines.event(WEDGE, WatchLine.Event.LOST_SOUND, WatchEvent.Phase.STARTS));
      figures.happens(Lines.event(WEDGE, WatchLine.Event.LOST_SOUND, WatchEvent.Phase.ENDS));
    }
    figures.happens(Lines.event(VOCAL, WatchLine.Event.STEP, WatchEvent.Phase.STARTS));
    assertEquals(
        "loopgauge_path_dropouts_total{path=\"wedge\"} 2.0",
        samples("loopgauge_path_dropouts_total").get(1));
    List<String> counted =
        samples("loopgauge_path_events_total").stream()
            .filter(line -> !line.endsWith(" 0.0"))
            .toList();
    assertEquals(
        List.of(
            "loopgauge_path_events_total{event=\"lost-sound\",path=\"wedge\"} 2.0",
            "loopgauge_path_events_total{event=\"step\",path=\"vocal-house\"} 1.0"),
        counted);
  }

  @Test
  void aNameCannotBreakOutOfItsQuotes() throws IOException {
    figures.starts(List.of("a\"} 1\n# EOF"), "");
    List<String> text = text();
    assertEquals(1, text.stream().filter("# EOF"::equals).count());
    assertFalse(samples("loopgauge_path_dropouts_total").isEmpty());
    assertTrue(text.contains("loopgauge_path_dropouts_total{path=\"a\\\"} 1\\n# EOF\"} 0.0"));
  }
}
