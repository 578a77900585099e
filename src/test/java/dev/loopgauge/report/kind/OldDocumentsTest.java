package dev.loopgauge.report.kind;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.ErrorDocument;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.html.ReadDocument;
import dev.loopgauge.report.html.ReportDocument;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.PairsDocument;
import dev.loopgauge.report.measured.SoakDocument;
import dev.loopgauge.report.measured.TrackDocument;
import dev.loopgauge.report.patch.PatchDocument;
import dev.loopgauge.report.planned.AlignmentDocument;
import dev.loopgauge.report.planned.PlanDocument;
import dev.loopgauge.report.series.SeriesDocument;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Documents that commit 414846f printed, of an invented theatre in the simulated rig, of noise and
 * of a JACK server, are read, told and put on the page.
 */
class OldDocumentsTest {
  private static Map<String, Object> document(String name) {
    try (InputStream file = OldDocumentsTest.class.getResourceAsStream(name + ".json")) {
      return Json.read(new String(file.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Stream<Arguments> documents() {
    return Stream.of(
        Arguments.of(
            "measure",
            MeasurementDocument.class,
            "WITHIN: vocal-house matches its budget (8.95 ms).",
            "429.4"),
        Arguments.of("late", MeasurementDocument.class, "LATE by 128 samples (2.67 ms)", "+128.0"),
        Arguments.of(
            "states", MeasurementDocument.class, "NOT AS REPORTED when active.", "294.000"),
        Arguments.of(
            "through", MeasurementDocument.class, "MEASURED: the return is 240 samples", "240.000"),
        Arguments.of("calibrate", MeasurementDocument.class, "No trustworthy reading: ", "Try: "),
        Arguments.of("refused", MeasurementDocument.class, "No trustworthy reading: ", "Try: "),
        Arguments.of("channels", ChannelsDocument.class, "MEASURED: 1 of 2 channels.", "480.000"),
        Arguments.of("soak", SoakDocument.class, "CLEAN: for 4.1 s nothing was lost", "429.40"),
        Arguments.of("track", TrackDocument.class, "FOLLOWED: 6 windows of 1 s, 1 jump.", "542.0"),
        Arguments.of("pairs", PairsDocument.class, "MEASURED: 1 of 3 pairs have sound", "480.00"),
        Arguments.of("budget", BudgetDocument.class, "OVER the limit: vocal-house by", "limiter"),
        Arguments.of("what-if", BudgetDocument.class, "What if ", "limiter"),
        Arguments.of("series", SeriesDocument.class, "2 blocks plus 219 samples (4.56 ms)", "219"),
        Arguments.of("plan", PlanDocument.class, "CHOOSE block 4096 at 96 kHz", "4096"),
        Arguments.of(
            "align", AlignmentDocument.class, "OVER A LIMIT: these delays", "vocal-in-ear"),
        Arguments.of("error", ErrorDocument.class, "no chain file nowhere.yaml", "nowhere.yaml"));
  }

  @ParameterizedTest
  @MethodSource("documents")
  void areReadAndTold(String name, Class<? extends Document> kind, String headline) {
    Document document = Documents.read(document(name)).orElseThrow();
    assertEquals(kind, document.getClass());
    assertTrue(document.text().startsWith(headline), document.text());
  }

  @ParameterizedTest
  @MethodSource("documents")
  void standOnThePage(String name, Class<? extends Document> kind, String headline, String shown) {
    ReadDocument reading = ReadDocument.ofFile(name + ".json", document(name));
    assertTrue(reading.isShown(), headline + kind);
    String page = new ReportDocument("Old", "0.1.0", List.of(reading)).html();
    assertTrue(page.contains(shown), page);
  }

  @ParameterizedTest
  @MethodSource("documents")
  void keepWhatTheyHeld(String name) {
    Map<String, Object> old = document(name);
    Map<String, Object> again = Documents.read(old).orElseThrow().json();
    assertHolds(name, old, again);
  }

  /** Each key of the old document with its value; there may be more. */
  private static void assertHolds(String where, Object old, Object again) {
    if (old instanceof Map<?, ?> keys) {
      Map<?, ?> found = (Map<?, ?>) again;
      keys.forEach((key, value) -> assertHolds(where + "." + key, value, found.get(key)));
    } else if (old instanceof List<?> list) {
      assertEquals(list.size(), ((List<?>) again).size(), where);
      for (int i = 0; i < list.size(); i++) {
        assertHolds(where + "[" + i + "]", list.get(i), ((List<?>) again).get(i));
      }
    } else {
      assertEquals(String.valueOf(old), String.valueOf(again), where);
    }
  }

  @Test
  void aPatchCheckIsReadThoughItHasNoPlaceOnThePage() {
    Document document = Documents.read(document("patch")).orElseThrow();
    assertEquals(PatchDocument.class, document.getClass());
    assertTrue(document.text().startsWith("HEARD: each send comes back."), document.text());
  }

  @Test
  void theNewCommandsMakeTheSameKinds() {
    for (Map.Entry<String, String> renamed :
        Map.of("soak", "soak", "track", "follow", "pairs", "pairs", "patch", "patch").entrySet()) {
      Map<String, Object> document = document(renamed.getKey());
      Class<?> old = Documents.read(document).orElseThrow().getClass();
      document.put("command", renamed.getValue());
      assertEquals(old, Documents.read(document).orElseThrow().getClass());
    }
    Map<String, Object> host = document("late");
    host.put("command", "host");
    assertEquals(MeasurementDocument.class, Documents.read(host).orElseThrow().getClass());
  }

  @Test
  void aDocumentOfAnotherKindIsNoneThatCanBeRead() {
    assertTrue(Documents.read(Map.of("command", "devices", "outcome", "listed")).isEmpty());
    assertTrue(Documents.read(Map.of()).isEmpty());
    assertTrue(Documents.read(Map.of("command", 7, "outcome", List.of())).isEmpty());
  }
}
