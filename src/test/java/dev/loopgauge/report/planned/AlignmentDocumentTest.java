package dev.loopgauge.report.planned;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.plan.AlignRequest;
import dev.loopgauge.plan.Alignment;
import dev.loopgauge.plan.DeskStep;
import dev.loopgauge.plan.MeasuredLoop;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.signal.Latency;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AlignmentDocumentTest {
  private static final String CHAIN =
      """
      chain: Festival field
      sample-rate: 48000
      stages:
        desk: { ms: 2 }
        insert: { samples: 100, compensated: unknown }
        throw: { metres: 10 }
      paths:
        main: { listener: house, stages: [desk, insert, throw] }
        tower: { listener: house, stages: [desk] }
        singer: { listener: in-ear, stages: [desk] }
      mixes:
        field: [main, { path: tower, offset-ms: 8 }]
      """;

  private static final String STAGE = "  stage: [tower, { path: singer, offset-ms: 4 }]\n";

  private static Map<String, MeasuredLoop> measured(Map<String, Latency> loops) {
    return loops.entrySet().stream()
        .collect(Collectors.toMap(Map.Entry::getKey, loop -> MeasuredLoop.of(loop.getValue())));
  }

  private static AlignmentDocument document(String yaml, String step, Map<String, Latency> loops)
      throws ChainFormatException {
    return document(yaml, step, loops, Optional.empty());
  }

  private static AlignmentDocument document(
      String yaml, String step, Map<String, Latency> loops, Optional<String> csvFile)
      throws ChainFormatException {
    Chain chain = ChainParser.parse(yaml, "field.yaml");
    return AlignmentDocument.of(
        chain,
        Alignment.of(
            AlignRequest.of(chain, measured(loops), Optional.empty(), DeskStep.parse(step))
                .delaying(Set.of(Listener.IN_EAR))),
        csvFile);
  }

  /** By hand: 10 m are 1398.60 samples, the insert 100 and the offset 384: 1882.60, so 1883. */
  @Test
  void tableIsReadyForTheDesk() throws ChainFormatException {
    assertEquals(
        """
        SET these delays: then the paths of each mix meet.

          mix    path   behind  samples      ms  metres   feet  from
          field  main        0        0   0.000    0.00   0.00  predicted
          field  tower       8     1883  39.229   13.46  44.17  predicted

          field        all meet main. Rounding to whole samples leaves 0.008 ms:
                       inaudible.
          unknown      does the desk delay the rest of field to match insert? If so,
                       other delays are needed; measure the paths and give --measured
        """,
        document(CHAIN, "samples", Map.of()).text());
  }

  @Test
  void aTableThatIsWrittenToAFileIsNamedInItsPlace() throws ChainFormatException {
    String text = document(CHAIN, "samples", Map.of(), Optional.of("field.csv")).text();
    assertTrue(
        text.startsWith(
            """
            SET the delays in field.csv: then the paths of each mix meet.

              field        all meet main. Rounding to whole samples leaves 0.008 ms:
            """),
        text);
    assertTrue(text.endsWith("\n  written      field.csv\n"), text);
  }

  @Test
  void conflictsAndLimitsComeWithAWayOut() throws ChainFormatException {
    AlignmentDocument document = document(CHAIN + STAGE, "0.5ms", Map.of());
    assertFalse(document.isGood());
    assertEquals("conflicting", document.json().get("outcome"));
    assertTrue(
        document
            .text()
            .startsWith(
                """
                CONFLICT: tower needs 1872 samples (39.000 ms) in field but 0 samples (0.000 ms)
                  in stage.
                  try          set it where each mix is made, if the desk can; or set the larger
                               one and add 1872 samples (39.000 ms) more to the others of stage
                """),
        document.text());
    assertTrue(document.text().contains("singer is then 6.0 ms late, over its limit of 5 ms"));
    assertTrue(document.text().lines().allMatch(line -> line.length() <= 80), document.text());
  }

  @Test
  void performersLimitAloneIsSaidFirst() throws ChainFormatException {
    String stageOnly = CHAIN.replaceAll("  field: .*\n", "") + STAGE;
    AlignmentDocument document = document(stageOnly, "samples", Map.of());
    assertEquals("over-limit", document.json().get("outcome"));
    assertTrue(document.text().startsWith("OVER A LIMIT: these delays"), document.text());
  }

  @Test
  void whatIsMeasuredIsSaidToBe() throws ChainFormatException {
    Chain chain = ChainParser.parse(CHAIN, "field.yaml");
    Map<String, Latency> loops = Map.of("main", new Latency(250, chain.rate()));
    assertTrue(document(CHAIN, "samples", loops).text().contains("0.00   0.00  measured"));
  }

  /** Half a step of 0.4 m is 0.58 ms, whose first null, 858 Hz, is well within hearing. */
  @Test
  void coarseStepsSayFromWhereTheyComb() throws ChainFormatException {
    String text = document(CHAIN, "0.4m", Map.of()).text().replaceAll("\\s+", " ");
    assertTrue(text.contains("Rounding to steps of 0.4 m leaves "), text);
    assertTrue(text.contains(" ms: combs from "), text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"de-DE", "ar-EG-u-nu-arab", "tr-TR"})
  void numbersAreTheSameInAnyLocale(String tag) throws ChainFormatException {
    Locale before = Locale.getDefault();
    AlignmentDocument document = document(CHAIN + STAGE, "0.1ms", Map.of());
    String text = document.text();
    String json = Json.write(document);
    try {
      Locale.setDefault(Locale.forLanguageTag(tag));
      assertEquals(text, document.text());
      assertEquals(json, Json.write(document));
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void jsonKeepsTheContract() throws ChainFormatException {
    String json = Json.write(document(CHAIN, "samples", Map.of())).replace("\r\n", "\n");
    assertTrue(
        json.startsWith(
            """
            {
              "schema" : 1,
              "command" : "align",
              "outcome" : "aligned",
              "step" : "1 sample",
              "mixes" : [ {
                "name" : "field",
                "target" : "main",
                "widestGapSamples" : 0.3986,
                "firstNullHz" : 60210.53,
                "unknownCompensation" : [ "insert" ],
                "paths" : [ {
                  "path" : "main",
                  "delaySamples" : 1594.6014,
                  "delayMs" : 33.220862,
                  "offsetMs" : 0,
                  "addSamples" : 0,
                  "addMs" : 0,
            """),
        json);
    assertTrue(json.contains("\"source\" : \"predicted\""), json);
  }

  /** RFC 4180: cells with commas or quotes are quoted, quotes doubled. */
  @Test
  void csvHoldsTheSameTable() throws ChainFormatException {
    String odd = CHAIN.replace("tower", "\"tower, \\\"left\\\"\"");
    String[] lines = AlignmentCsv.of(document(odd, "samples", Map.of())).split("\r\n", -1);
    assertEquals(
        "mix,path,source,delaySamples,delayMs,offsetMs,addSamples,addMs,addMetres,addFeet,"
            + "leavesSamples,firstNullHz",
        lines[0]);
    assertEquals("field,main,predicted,1594.6014,33.220862,0,0,0,0,0,0,", lines[1]);
    assertEquals(
        "field,\"tower, \"\"left\"\"\",predicted,96,2,8,1883,39.229167,13.4635,44.1714,"
            + "0.3986,60210.53",
        lines[2]);
    assertEquals("", lines[3]);
  }
}
