package dev.loopgauge.report.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.form.Json;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BudgetDocumentTest {
  private static final String CHAIN =
      """
      chain: Quay Stage
      sample-rate: 48000
      block-size: 64
      stages:
        box: { samples: 12, tolerance-samples: 1 }
        desk: { ms: 0.8, tolerance-ms: 0.05 }
        host: { blocks: 2 }
        wedge-throw: { metres: 1.8 }
        wall: { ms: 40 }
      paths:
        singer: { listener: wedge, stages: [box, desk, host, wedge-throw] }
        singer-stream: { listener: stream, stages: [box, desk, host], picture: screen }
        late-house: { listener: house, stages: [box, wall] }
      pictures:
        screen: { stages: [wall] }
      """;

  private static final String SUMMARY =
      """
      OVER the limit: late-house by 25.3 ms.
      Quay Stage · 48 kHz · block 64 · 20 °C

        path           listener      ms  samples    ±  metres  feet  standing
        singer         wedge      8.961    430.1  3.4    3.08  10.1  within
        singer-stream  stream     3.717    178.4  3.4    1.28   4.2  within
        late-house     house     40.250   1932.0    1   13.81  45.3  OVER by 25.3 ms

      singer-stream, picture screen: sound early by 36.3 ms, within EBU R37 (+40 to
        -60 ms)
        add 36.3 ms to the sound
        closest without a delay: block 192, sound early by 31.0 ms
      """;

  private static BudgetDocument document(String... paths) throws ChainFormatException {
    Chain chain = ChainParser.parse(CHAIN, "quay.yaml");
    return BudgetDocument.of(
        chain,
        List.of(paths).stream().map(path -> ChainBudget.of(chain, chain.path(path))).toList(),
        PictureRule.EBU_R37);
  }

  private static BudgetDocument all() throws ChainFormatException {
    return document("singer", "singer-stream", "late-house");
  }

  @Test
  void listsEachPathAgainstItsListenerAndPicture() throws ChainFormatException {
    String text = all().text();
    assertTrue(text.startsWith(SUMMARY), text);
    assertTrue(text.lines().allMatch(line -> line.length() <= 80), text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"de-DE", "ar-EG-u-nu-arab", "tr-TR"})
  void numbersAreTheSameInAnyLocale(String tag) throws ChainFormatException {
    Locale before = Locale.getDefault();
    String text = all().text();
    String json = Json.write(all());
    try {
      Locale.setDefault(Locale.forLanguageTag(tag));
      assertEquals(text, all().text());
      assertEquals(json, Json.write(all()));
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void goesIntoTheStagesAndWhatACableRunsThrough() throws ChainFormatException {
    String text = document("singer").inStages().text();
    assertTrue(
        text.contains(
            """
            singer, wedge: within
              stage               ms  samples    ±
              box              0.250     12.0    1
              desk             0.800     38.4  2.4
              host             2.667    128.0    0
              wedge-throw      5.245    251.7    0
              (whole path)     8.961    430.1  3.4
              (loop by cable)  3.717    178.4  3.4
            As if the wedge stood 3.08 m (10.1 ft) further away.
            """),
        text);
  }

  @Test
  void jsonKeepsTheContract() throws ChainFormatException {
    assertEquals(
        """
        {
          "schema" : 1,
          "command" : "budget",
          "outcome" : "predicted",
          "chain" : "Quay Stage",
          "sampleRateHz" : 48000,
          "blockSize" : 64,
          "airTemperature" : 20,
          "hosts" : [ ],
          "paths" : [ {
            "name" : "late-house",
            "listener" : "house",
            "delaySamples" : 1932,
            "delayMs" : 40.25,
            "toleranceSamples" : 1,
            "equivalentMetres" : 13.814,
            "equivalentFeet" : 45.321,
            "standing" : "over",
            "judged" : {
              "ms" : 40.25,
              "against" : "source, without air"
            },
            "positions" : [ ],
            "cautionMs" : null,
            "limitMs" : 15,
            "limitSource" : "up to 15 ms passes unnoticed but in the front rows: common practice, no source",
            "stages" : [ {
              "name" : "box",
              "delaySamples" : 12,
              "delayMs" : 0.25,
              "toleranceSamples" : 1
            }, {
              "name" : "wall",
              "delaySamples" : 1920,
              "delayMs" : 40,
              "toleranceSamples" : 0
            } ],
            "loopSamples" : 1932,
            "loopMs" : 40.25,
            "loopToleranceSamples" : 1
          } ],
          "inputs" : [ ],
          "mixes" : [ ]
        }""",
        Json.write(document("late-house")).replace("\r\n", "\n"));
  }

  /** 68 m less 8 m of air and 1 ms more are 175.8 ms between the two at the tower. */
  @Test
  void namesThePairThatAHousePathIsJudgedBy() throws ChainFormatException {
    Chain chain =
        ChainParser.parse(
            """
            sample-rate: 48000
            stages: { desk: { ms: 1 }, wall: { ms: 1 } }
            paths:
              main:  { listener: house, input: x, stages: [desk, wall], loudspeaker: main-pa }
              tower: { listener: house, input: x, stages: [desk], loudspeaker: tower-pa }
            positions:
              far: { throw-metres: { main-pa: 68, tower-pa: 8 } }
            """,
            "field.yaml");
    BudgetDocument field = BudgetDocument.of(chain, ChainBudget.all(chain), PictureRule.EBU_R37);
    String first = field.text().replaceAll("\\s+", " ");
    assertTrue(
        first.contains("main by 160.8 ms (175.8 ms after tower at far: tower lacks delay)"), first);
    String json = Json.write(field);
    assertTrue(json.contains("\"against\" : \"tower at far\""), json);
    assertTrue(json.contains("\"afterFirstMs\" : 175.82"), json);
  }
}
