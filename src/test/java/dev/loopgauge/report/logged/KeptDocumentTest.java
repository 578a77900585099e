package dev.loopgauge.report.logged;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.journal.MeasuredSummary;
import dev.loopgauge.journal.MeasuredSummary.Octave;
import dev.loopgauge.journal.MeasuredSummary.Told;
import dev.loopgauge.report.form.Json;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the journal compares is read from documents of this version, of others and of none. */
class KeptDocumentTest {
  private static final String FULL =
      """
      {
        "measurement": {
          "sampleRateHz": 48000, "polarity": "inverted", "levelDb": -6.5,
          "levelUncertaintyDb": 0.02, "signalToNoiseDb": 61, "method": "referenced",
          "arrivals": [
            { "delaySamples": 480, "levelDb": -6.5, "polarity": "inverted" },
            { "delaySamples": 600, "levelDb": -26.5, "polarity": "normal" },
            { "delaySamples": 432, "levelDb": -26.5, "polarity": "inverted" } ],
          "bands": [
            { "centreHz": 31.5, "delaySamples": 480 },
            { "centreHz": 63, "delaySamples": 480, "levelDb": -7, "levelUncertaintyDb": 0.1 } ]
        },
        "findings": [ { "code": "inverted", "text": "it is", "hint": "look" }, { "code": "odd" } ]
      }
      """;

  private static KeptDocument read(String json) throws IOException {
    return KeptDocument.of(Json.read(json));
  }

  @Test
  void readsAllThatIsCompared() throws IOException {
    MeasuredSummary summary = read(FULL).summary();
    assertEquals(Optional.of(true), summary.inverted());
    assertEquals(Optional.of(-6.5), summary.levelDb());
    assertEquals(0.02, summary.levelUncertaintyDb());
    assertEquals(Optional.of(61.0), summary.signalToNoiseDb());
    assertEquals(List.of(new Octave(63, -7, 0.1)), summary.octaves());
    assertEquals(
        Map.of("inverted", new Told("it is", "look"), "odd", new Told("odd", "look at the entry")),
        summary.findings());
    assertEquals(Optional.of("referenced"), read(FULL).method());
  }

  /** The measured arrival is the first one; 120 samples at 48 kHz are 2.5 ms, -20 dB is a tenth. */
  @Test
  void otherArrivalsStandAgainstTheMeasuredOne() throws IOException {
    List<MeasuredSummary.Copy> copies = read(FULL).summary().copies();
    assertEquals(2, copies.size());
    assertEquals(2.5, copies.get(0).laterMs(), 1e-12);
    assertEquals(-0.1, copies.get(0).gain(), 1e-12);
    assertEquals(-1, copies.get(1).laterMs(), 1e-12);
    assertEquals(0.1, copies.get(1).gain(), 1e-12);
  }

  @ParameterizedTest
  @CsvSource({"normal, false", "inverted, true", "undetermined,", "sideways,"})
  void polarityIsToldOnlyWhereItIsKnown(String polarity, Boolean inverted) throws IOException {
    String json = "{ \"measurement\": { \"polarity\": \"" + polarity + "\" } }";
    assertEquals(Optional.ofNullable(inverted), read(json).summary().inverted());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{}",
        "{ \"measurement\": null, \"findings\": 3 }",
        "{ \"measurement\": [], \"findings\": [ 1 ] }",
        "{ \"measurement\": { \"sampleRateHz\": 0, \"arrivals\": [ {}, {} ], \"bands\": 1 } }"
      })
  void whatIsMissingOrWrongTellsNothing(String json) throws IOException {
    assertEquals(MeasuredSummary.refused(Map.of()), read(json).summary());
  }
}
