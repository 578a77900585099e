package dev.loopgauge.report.measured;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Expectation;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.ReportedDelay;
import dev.loopgauge.verify.Verdict;
import dev.loopgauge.verify.verdict.JudgedReading;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeasurementDocumentTest {
  private static final String LATE =
      """
      LATE by 128 samples (2.67 ms): vocal-house is slower than budgeted.
        measured     723.018 ± 0.036 samples  15.0629 ± 0.0008 ms
        budget       595 ± 3 samples          12.396 ms
                     plus 1 sample of allowance (--allow-samples)
        difference   +128.018 samples         +2.6671 ms           2 blocks
        most likely  the host runs at a block of 128 samples, not 64: check its
                     settings (off by +0.018 samples)
        how          referenced, 3 readings, 61 dB above noise, level -12.0 dB
        also clean   polarity normal, not clipped, clocks locked within 0.03 ppm
      """;

  private static MeasurementDocument document(Estimate estimate, Optional<Comparison> comparison) {
    return MeasurementDocument.of(
        "analyze",
        comparison
            .map(
                c ->
                    JudgedReading.ofPath(
                        estimate, comparison, Optional.empty(), Expectation.NONE, Optional.empty()))
            .orElseGet(() -> JudgedReading.ofNoPath(estimate, Optional.empty())),
        List.of());
  }

  private static MeasurementDocument late() {
    return document(
        Samples.found(Method.REFERENCED),
        Optional.of(Samples.comparison(595, Verdict.LATE, OptionalInt.of(2))));
  }

  @Test
  void theVerdictComesFirstInWords() {
    assertEquals(LATE, late().text());
  }

  @Test
  void anArrivalBesideTheMeasuredOneIsWeakerOrStrongerNeverLessThanNothing() {
    String text = document(Samples.withArrivals(-12.04, -18.5, -9.0), Optional.empty()).text();
    assertTrue(text.contains("6.5 dB weaker, polarity normal"), text);
    assertTrue(text.contains("3.0 dB stronger, polarity normal"), text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"de-DE", "ar-EG-u-nu-arab", "tr-TR"})
  void numbersAreTheSameInAnyLocale(String tag) {
    Locale before = Locale.getDefault();
    String json = Json.write(late());
    try {
      Locale.setDefault(Locale.forLanguageTag(tag));
      assertEquals(LATE, late().text());
      assertEquals(json, Json.write(late()));
    } finally {
      Locale.setDefault(before);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "WITHIN, within-budget, WITHIN: vocal-house matches its budget (16.67 ms).",
    "EARLY, outside-budget, EARLY by 77 samples (1.60 ms): vocal-house is faster than budgeted.",
    "LATE, outside-budget, LATE by 77 samples (1.60 ms): vocal-house is slower than budgeted.",
    "UNDECIDED, undecided, UNDECIDED: ±0.036 samples is too coarse to tell whether vocal-house is in budget.",
  })
  void eachVerdictHasItsOutcomeAndWords(Verdict verdict, String outcome, String headline) {
    MeasurementDocument document =
        document(
            Samples.found(Method.REFERENCED),
            Optional.of(Samples.comparison(800, verdict, OptionalInt.empty())));
    assertEquals(outcome, document.outcome().label());
    String text = document.text().replaceAll("\\s+", " ");
    assertEquals(headline, text.substring(0, text.indexOf(" measured ")));
  }

  @Test
  void withoutABudgetItSaysTheNumber() {
    MeasurementDocument document = document(Samples.found(Method.REFERENCED), Optional.empty());
    assertEquals("measured", document.outcome().label());
    assertTrue(
        document.text().startsWith("MEASURED: the return is 723.018 samples (15.06 ms) late.\n"),
        document.text());
  }

  @Test
  void aReturnThatLeadsIsSaidToLead() {
    Measurement leading =
        new Measurement(
            new Latency(-3.25, Samples.RATE),
            0.04,
            Optional.empty(),
            Optional.empty(),
            Polarity.NORMAL,
            0,
            0.1,
            40,
            Method.REFERENCED,
            1,
            Optional.empty(),
            List.of(),
            List.of(),
            List.of(),
            Optional.empty(),
            false);
    String text = document(new Estimate.Found(leading, List.of()), Optional.empty()).text();
    assertTrue(
        text.startsWith(
            "MEASURED: the return comes 3.25 samples (0.07 ms) before the reference.\n"),
        text);
  }

  @Test
  void aRefusalGivesTheReasonAndNoNumber() {
    MeasurementDocument document = document(Samples.refused(), Optional.empty());
    assertEquals(
        """
        No trustworthy reading: return 2 hears no sweep (it is 6 dB below its own
          noise).
          try          is return 2 the right channel? `loopgauge patch` finds it
          finding      return 2 clips
            try        turn the input gain down
        """,
        document.text());
    assertEquals("not-trustworthy", document.outcome().label());
    Map<String, Object> json = document.json();
    assertTrue(json.containsKey("measurement") && json.get("measurement") == null);
    assertTrue(json.containsKey("comparison") && json.get("comparison") == null);
  }

  @Test
  void aNumberWithTheCardInItGetsNoVerdict() {
    Estimate uncalibrated = Samples.found(Method.UNCALIBRATED);
    for (Verdict verdict : List.of(Verdict.WITHIN, Verdict.EARLY, Verdict.LATE)) {
      Optional<Comparison> decided =
          Optional.of(Samples.comparison(595, verdict, OptionalInt.empty()));
      assertThrows(
          IllegalArgumentException.class, () -> document(uncalibrated, decided), verdict::label);
    }
    String text =
        document(
                uncalibrated,
                Optional.of(Samples.comparison(595, Verdict.UNDECIDED, OptionalInt.empty())))
            .text();
    assertTrue(text.startsWith("UNDECIDED: the sound card's own delay is in the reading.\n"), text);
  }

  @Test
  void aDelayWithTheCardInItHasNoPlusMinus() {
    String calibrated = document(Samples.found(Method.CALIBRATED), Optional.empty()).text();
    assertTrue(calibrated.contains("723.018 ± 0.036 samples  15.0629 ± 0.0008 ms"), calibrated);

    MeasurementDocument document = document(Samples.found(Method.UNCALIBRATED), Optional.empty());
    assertTrue(document.text().contains("  723.018 samples          15.0629 ms"), document.text());
    assertFalse(document.text().contains("±"), document.text());
    String checked =
        HostCheckRecord.of(
                HostCheck.of(
                    Samples.measurement(Method.UNCALIBRATED), ReportedDelay.ofSamples(595)))
            .text()
            .orElseThrow();
    assertTrue(checked.endsWith("own delay is in the reading of 723.018 samples"), checked);
    Map<?, ?> json = (Map<?, ?>) document.json().get("measurement");
    assertEquals(new BigDecimal("0.036"), json.get("uncertaintySamples"));
  }

  @Test
  void norHasWhatIsComparedWithABudget() {
    for (Method method : Method.values()) {
      MeasurementRecord measured = MeasurementRecord.of(Samples.pure(method));
      assertEquals(method == Method.UNCALIBRATED, !measured.budgeted().inSamples().contains("±"));
    }
  }

  @Test
  void aComparisonNeedsANumber() {
    Optional<Comparison> comparison =
        Optional.of(Samples.comparison(595, Verdict.LATE, OptionalInt.empty()));
    assertThrows(IllegalArgumentException.class, () -> document(Samples.refused(), comparison));
  }

  @Test
  void jsonKeepsTheContract() {
    assertEquals(
        """
        {
          "schema" : 1,
          "command" : "analyze",
          "outcome" : "outside-budget",
          "verdict" : {
            "standing" : "bad",
            "aspects" : [ {
              "aspect" : "delay",
              "standing" : "bad",
              "text" : "2.67 ms (128 samples) slower than budgeted"
            }, {
              "aspect" : "polarity",
              "standing" : "good",
              "text" : "the return is not inverted"
            }, {
              "aspect" : "arrivals",
              "standing" : "good",
              "text" : "one arrival"
            }, {
              "aspect" : "lost-sound",
              "standing" : "good",
              "text" : "no sound was lost"
            }, {
              "aspect" : "clocks",
              "standing" : "good",
              "text" : "locked within 0.03 ppm"
            }, {
              "aspect" : "level",
              "standing" : "not-judged",
              "text" : "the level is -12 dB"
            }, {
              "aspect" : "response",
              "standing" : "not-judged",
              "text" : "no response is expected"
            }, {
              "aspect" : "clipping",
              "standing" : "good",
              "text" : "not clipped"
            } ]
          },
          "measurement" : {
            "definition" : "2",
            "sampleRateHz" : 48000,
            "delaySamples" : 723.0184,
            "delayMs" : 15.062883,
            "uncertaintySamples" : 0.036,
            "uncertaintyMs" : 0.00075,
            "coverageFactor" : 2,
            "bandHz" : [ 20, 20000 ],
            "pure" : {
              "delaySamples" : 723.0184,
              "uncertaintySamples" : 0.036
            },
            "polarity" : "normal",
            "levelDb" : -12.04,
            "levelUncertaintyDb" : 0.02,
            "signalToNoiseDb" : 61.2,
            "method" : "referenced",
            "repeats" : 3,
            "clockDriftPpm" : 0.02,
            "clockDriftUncertaintyPpm" : 0.01,
            "arrivals" : [ {
              "delaySamples" : 723.0184,
              "levelDb" : -12.04,
              "polarity" : "normal"
            } ],
            "lostSound" : [ ],
            "bands" : [ ]
          },
          "findings" : [ ],
          "comparison" : {
            "path" : "vocal-house",
            "predictedSamples" : 595,
            "predictedMs" : 12.395833,
            "toleranceSamples" : 3,
            "allowSamples" : 1,
            "differenceSamples" : 128.0184,
            "differenceMs" : 2.66705,
            "differenceBlocks" : 2,
            "verdict" : "late",
            "explanations" : [ {
              "cause" : "block-size",
              "text" : "the host runs at a block of 128 samples, not 64: check its settings",
              "predictedSamples" : 723,
              "residualSamples" : 0.0184
            } ]
          },
          "response" : {
            "firstSamples" : 700,
            "stepSamples" : 8,
            "levelsDb" : [ -80, -61.27, 0, -80 ]
          }
        }""",
        Json.write(late()).replace("\r\n", "\n"));
  }

  @Test
  void aLevelBeyondArithmeticIsStillANumber() {
    Measurement flawless =
        new Measurement(
            new Latency(64, Samples.RATE),
            1e-9,
            Optional.empty(),
            Optional.empty(),
            Polarity.NORMAL,
            0,
            0.1,
            400,
            Method.REFERENCED,
            1,
            Optional.empty(),
            List.of(),
            List.of(),
            List.of(),
            Optional.empty(),
            false);
    MeasurementDocument document =
        document(new Estimate.Found(flawless, List.of()), Optional.empty());
    assertTrue(Json.write(document).contains("\"signalToNoiseDb\" : 319"));
    assertTrue(Json.write(document).contains("\"uncertaintySamples\" : 0.000000001"));
    assertTrue(document.text().contains("319 dB above noise"), document.text());
  }
}
