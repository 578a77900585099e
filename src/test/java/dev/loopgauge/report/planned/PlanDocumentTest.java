package dev.loopgauge.report.planned;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.plan.BlockFit;
import dev.loopgauge.plan.Load;
import dev.loopgauge.plan.PathDelays;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.plan.Plan;
import dev.loopgauge.plan.PlanRequest;
import dev.loopgauge.plan.Setting;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlanDocumentTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final String CHAIN =
      """
      chain: Quay Stage
      sample-rate: 48000
      block-size: 64
      stages:
        desk: { ms: 1 }
        host: { blocks: 2 }
      paths:
        house: { listener: house, stages: [desk, host] }
        singer: { listener: in-ear, stages: [desk, host] }
        stream: { listener: stream, stages: [desk, host], picture: screen }
      pictures:
        screen: { ms: 40 }
      """;

  private static final String TEXT =
      """
      CHOOSE block 256 at 48 kHz: every listener is within limits.
        one step up  block 512: house would be 22.4 ms late, 7.4 ms over its limit of
                     15 ms
        rule         up to 15 ms passes unnoticed but in the front rows: common
                     practice, no source
        patch twice  input desk, once more before the host, for singer (then 1.0 ms)
        picture      stream: sound early by 28.3 ms, within EBU R37 (+40 to -60 ms);
                     add 28.3 ms to the sound
        measured     house

        block  kHz  ms a block  CPU %  spare ms  on      off picture  patch twice
          256   48        5.33   20.0       3.3  house          28.3            1
           64   48        1.33      -       1.3  singer         36.3            0
        left out     block 128 at 48 kHz: sound dropped out there when it was measured
      """;

  private static PlanDocument document(String yaml) throws ChainFormatException {
    Chain chain = ChainParser.parse(yaml, "quay.yaml");
    PlanRequest request =
        new PlanRequest(
            chain,
            List.of(64, 128, 256, 512),
            List.of(RATE),
            Set.of("singer"),
            PictureRule.EBU_R37,
            PathDelays.fitted(Map.of("house", new BlockFit(RATE, 2, 50))),
            Map.of(
                new Setting(128, RATE),
                new Load(OptionalDouble.of(30), OptionalInt.of(2)),
                new Setting(256, RATE),
                new Load(OptionalDouble.of(20), OptionalInt.empty())));
    return PlanDocument.of(request, Plan.of(request));
  }

  @Test
  void choiceComesFirstThenWhatBreaksNextThenTheOthers() throws ChainFormatException {
    assertEquals(TEXT, document(CHAIN).text());
  }

  @ParameterizedTest
  @ValueSource(strings = {"de-DE", "ar-EG-u-nu-arab", "tr-TR"})
  void numbersAreTheSameInAnyLocale(String tag) throws ChainFormatException {
    Locale before = Locale.getDefault();
    String json = Json.write(document(CHAIN));
    try {
      Locale.setDefault(Locale.forLanguageTag(tag));
      assertEquals(TEXT, document(CHAIN).text());
      assertEquals(json, Json.write(document(CHAIN)));
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void emptyPlanNamesTheLimitAndTheWayOut() throws ChainFormatException {
    assertEquals(
        """
        NOTHING FITS: no setting keeps every listener within limits.
          nearest      block 64 at 48 kHz: singer would be 20.0 ms late, 15.0 ms over
                       its limit of 5 ms
          rule         own voice is noticeably late from 3-5 ms: Agnew & Thornton 2000
          try          remove stages from singer
          left out     block 128 at 48 kHz: sound dropped out there when it was measured
        """,
        document(CHAIN.replace("ms: 1 ", "ms: 20 ")).text());
  }

  @Test
  void jsonKeepsTheContract() throws ChainFormatException {
    Map<String, Object> json = document(CHAIN).json();
    assertEquals(
        List.of("schema", "command", "outcome", "choices", "limit", "droppedOut"),
        List.copyOf(json.keySet()));
    assertEquals("planned", json.get("outcome"));
    Map<?, ?> best = (Map<?, ?>) ((List<?>) json.get("choices")).get(0);
    assertEquals(256, best.get("blockSize"));
    assertEquals(48_000, best.get("sampleRateHz"));
    assertEquals(List.of("singer"), best.get("beforeHost"));
    assertEquals(
        List.of(Map.of("input", "desk", "paths", List.of("singer"))), best.get("doublePatches"));
    String text = Json.write(document(CHAIN)).replace("\r\n", "\n");
    assertTrue(
        text.contains(
            """
              "limit" : {
                "blockSize" : 512,
                "sampleRateHz" : 48000,
                "path" : "house",
                "kind" : "listener",
                "reachedMs" : 22.375,
                "limitMs" : 15,
                "overMs" : 7.375,
            """),
        text);
  }
}
