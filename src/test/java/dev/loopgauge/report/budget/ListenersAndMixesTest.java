package dev.loopgauge.report.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.jr.ob.JSON;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.form.Json;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the budget says of listeners and mixes. */
class ListenersAndMixesTest {
  private static final String CHAIN =
      """
      chain: Festival field
      sample-rate: 48000
      block-size: 64
      stages:
        box:     { samples: 24 }
        desk:    { ms: 1, tolerance-ms: 0.125 }
        host:    { blocks: 3, tolerance-samples: 1 }
        limiter: { samples: 288, reported-by: host, compensated: unknown }
        throw:   { metres: 3.432 }
        cloud:   { ms: 200 }
      paths:
        house:     { listener: house,  input: vocal, stages: [box, desk, host, limiter], direct-metres: 2 }
        singer:    { listener: in-ear, input: vocal, stages: [box, desk], instrument: voice }
        wedge:     { listener: wedge,  input: vocal, stages: [box, desk, throw], instrument: sax }
        drummer:   { listener: in-ear, input: drums, stages: [box, desk, host, limiter], instrument: drums }
        presenter: { listener: stream, input: desk-mic, stages: [box, desk, cloud], returns-to-talker: yes }
      mixes:
        front: [house, { path: wedge, level-db: -6 }]
        stage: [singer, wedge]
      """;

  private static BudgetDocument document(String yaml) {
    try {
      Chain chain = ChainParser.parse(yaml, "field.yaml");
      return BudgetDocument.of(
          chain,
          chain.paths().values().stream().map(path -> ChainBudget.of(chain, path)).toList(),
          PictureRule.EBU_R37);
    } catch (ChainFormatException e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  /** Text without its line breaks, so that a sentence can be looked for as a whole. */
  private static String words(String yaml) {
    return document(yaml).text().replaceAll("\\s+", " ");
  }

  private static void assertSays(String sentence) {
    String words = words(CHAIN);
    assertTrue(words.contains(sentence), words);
  }

  private static Map<?, ?> json(String yaml) {
    try {
      return JSON.std.mapFrom(Json.write(document(yaml)));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static Map<?, ?> entry(Map<?, ?> json, String list, int index) {
    return (Map<?, ?>) ((List<?>) json.get(list)).get(index);
  }

  @Test
  void verdictComesFirst() {
    assertTrue(
        document(CHAIN).text().startsWith("OVER the limit: drummer by 6.5 ms.\n"),
        document(CHAIN).text());
    String calmer = CHAIN.replace("in-ear, input: drums", "wedge, input: drums");
    assertTrue(
        words(calmer).startsWith("CAUTION, some begin to notice: wedge at 11.5 ms, drummer at "));
    assertTrue(
        words(calmer.replace("288", "0").replace("3.432", "1"))
            .startsWith("WITHIN: every path by itself keeps its listener's limits. "));
  }

  /** 24 + 48 + 192 + 288 = 552 samples = 11.5 ms; without the host 72 = 1.5 ms. */
  @Test
  void inEarPathThatIsOverIsAdvised() {
    assertSays(
        "drummer: feed the in-ear mix from before the host (a second patch of the same input): "
            + "1.500 ms instead of 11.500 ms, within; it leaves out host, limiter.");
  }

  /** Lester and Boley, AES paper 7198, 2007, Table 1 (reported): drums in-ear 8 and 24.5 ms. */
  @Test
  void guidanceIsGivenAndNeverJudges() {
    assertSays(
        "drummer: 11.500 ms is fair for drums (good to 8 ms, fair to 24.5 ms; "
            + "Lester & Boley 2007, guidance only).");
    assertSays("wedge: 11.500 ms is worse than fair for sax (good to 1.5 ms, fair to 10 ms;");
  }

  /** 1.5 ms: nulls at 1/(2t) = 333.3 Hz and every 666.7 Hz (Everest, chapter 10, issuer). */
  @Test
  void singersHearTheirVoiceTwice() {
    assertSays("singer: own voice: bone plus in-ears comb from 333 Hz.");
    Map<?, ?> comb = (Map<?, ?>) entry(json(CHAIN), "paths", 1).get("ownVoice");
    assertEquals(666.67, comb.get("nullSpacingHz"));
    assertFalse(words(CHAIN).contains("drummer: own voice"));
  }

  /** Agnew and Thornton 2000 (issuer, abstract): objectionable above 10 ms. */
  @Test
  void pathBackToItsTalkerIsFlaggedWithItsRoundTrip() {
    assertSays(
        "presenter: comes back to its own talker, a round trip of 201.500 ms: "
            + "objectionable (above 10 ms), Agnew & Thornton 2000.");
  }

  /** 2 m are 5.82751 ms at 20 C (ISO 9613-1, reported): 11.5 - 5.82751 = 5.67249 ms later. */
  @Test
  void frontRowsHearTheStageDirect() {
    assertSays("house: direct sound after 5.828 ms, the loudspeakers 5.672 ms later: COLOURS,");
  }

  @Test
  void destinationsOfAnInputStandSideBySide() {
    assertSays(
        "Input vocal: singer is the fastest, 1.500 ms. Later are: "
            + "+10.000 ms house: host +4.000, limiter +6.000 "
            + "+10.000 ms wedge: throw +10.000");
  }

  /** House and wedge are both at 11.5 ms; the wedge is 6 dB down. */
  @Test
  void pairsOfAMixAreClassed() {
    assertSays("singer wedge 10.000 50.0 Hz 100 Hz full COLOURS");
    assertSays("COLOURS 5-35 ms blend to one sound, located at the first (Haas, after Everest)");
  }

  /** Meet, or are 6 ms apart: without the limiter the house comes at 5.5 ms, the wedge at 11.5. */
  @Test
  void unknownCompensationShowsBothOutcomesAndHowToSettleIt() {
    assertSays("house wedge 0.000 - - 9.6 dB safe or COLOURS");
    assertSays(
        "unknown does the desk compensate limiter? wedge is later than house by "
            + "0.000 ms if not: safe; 6.000 ms if so: COLOURS.");
    assertSays(
        "settle measure both with the whole mix switched in; the reading of wedge less that of "
            + "house is -10.000 ms if not; -4.000 ms if so.");
    assertSays("desk may delay wedge by 6.000 ms to match: 17.500 ms in all, OVER by 2.5 ms.");
  }

  @Test
  void deskThatWaitsPutsAListenerOverInTheVerdict() {
    String known = CHAIN.replace("compensated: unknown", "compensated: yes");
    assertTrue(
        words(known)
            .contains(
                "OVER the limit in the mix front: wedge by 2.5 ms, since the desk delays it to"),
        words(known));
  }

  @ParameterizedTest
  @ValueSource(strings = {"yes", "no", "unknown"})
  void linesFitTheScreen(String compensated) {
    String text = document(CHAIN.replace("unknown", compensated)).text();
    text.lines().forEach(line -> assertTrue(line.length() <= 80, line));
    assertFalse(text.contains("\n\n\n"), text);
  }

  @Test
  void documentsNameTheRuleAndTheNotes() {
    Map<?, ?> json = json(CHAIN);
    Map<?, ?> drummer = entry(json, "paths", 3);
    assertEquals(5, drummer.get("limitMs"));
    assertTrue(drummer.get("limitSource").toString().contains("Agnew & Thornton 2000"));
    assertEquals(72, ((Map<?, ?>) drummer.get("earlierFeed")).get("delaySamples"));
    assertEquals("fair", ((Map<?, ?>) drummer.get("guidance")).get("rating"));
    Map<?, ?> singer = entry(json, "paths", 1);
    assertEquals(333.33, ((Map<?, ?>) singer.get("ownVoice")).get("firstNullHz"));
    assertFalse(singer.containsKey("earlierFeed"));
    Map<?, ?> presenter = entry(json, "paths", 4);
    assertEquals(201.5, ((Map<?, ?>) presenter.get("returnsToTalker")).get("roundTripMs"));
    Map<?, ?> house = entry(json, "paths", 0);
    assertEquals("colours", ((Map<?, ?>) house.get("directSound")).get("effect"));
  }

  @Test
  void documentsHoldInputsAndMixes() {
    Map<?, ?> json = json(CHAIN);
    Map<?, ?> vocal = entry(json, "inputs", 0);
    assertEquals("singer", vocal.get("fastest"));
    assertEquals(480, entry(vocal, "later", 0).get("laterSamples"));
    Map<?, ?> pair = entry(entry(json, "mixes", 0), "pairs", 0);
    assertEquals(List.of("house", "wedge"), pair.get("paths"));
    assertEquals(List.of("limiter"), pair.get("unknownStages"));
    Map<?, ?> apart = entry(pair, "outcomes", 1);
    assertEquals(288, apart.get("secondLaterSamples"));
    assertEquals(-6, apart.get("laterLevelDb"));
    assertEquals(9.57, apart.get("rippleDb"));
    assertEquals("colours", apart.get("effect"));
  }
}
