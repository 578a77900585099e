package dev.loopgauge.chain.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainCheck;
import dev.loopgauge.chain.ChainFiles;
import dev.loopgauge.chain.CheckFinding;
import dev.loopgauge.chain.PathBudget;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** From the answers to the budget. */
class ChainDraftTest {
  private static final Map<DraftQuestion, String> ALL =
      Map.of(
          DraftQuestion.NAME, "Harbour: Field #2",
          DraftQuestion.SAMPLE_RATE, "96000",
          DraftQuestion.DESK_MS, "0.7",
          DraftQuestion.CONVERTER_SAMPLES, "20",
          DraftQuestion.BLOCK_SIZE, "128",
          DraftQuestion.HOST_BLOCKS, "3",
          DraftQuestion.LISTENERS, "house, in-ear, wedge, stream",
          DraftQuestion.DIRECT_METRES, "2.5",
          DraftQuestion.THROW_METRES, "7",
          DraftQuestion.REFERENCE, "5");

  private static Chain chain(Map<DraftQuestion, String> answers) {
    return ChainFiles.parsed(ChainDraft.yaml(answers));
  }

  private static PathBudget budget(Chain chain, String path) {
    return ChainBudget.of(chain, chain.path(path));
  }

  @Test
  void asksAtMostTenQuestions() {
    assertTrue(DraftQuestion.values().length <= 10);
  }

  /** 20 + 67.2 + 3 x 128 + 20 samples at 96 kHz; the front row 4.5 m nearer to the singer. */
  @Test
  void answersBecomeABudget() {
    Chain chain = chain(ALL);
    assertEquals("Harbour: Field #2", chain.name());
    assertEquals(
        Set.of("vocal-house", "vocal-in-ear", "vocal-wedge", "vocal-stream"),
        chain.paths().keySet());
    PathBudget house = budget(chain, "vocal-house");
    assertEquals(20 + 67.2 + 384 + 20, house.delay().samples(), 1e-9);
    assertEquals(491.2 / 96 + 4.5 / 343.2 * 1000, house.judged().ms(), 1e-9);
    assertEquals(107.2, budget(chain, "vocal-in-ear").delay().samples(), 1e-9);
    assertEquals(1.8 / 343.2 * 1000 + 107.2 / 96, budget(chain, "vocal-wedge").delay().ms(), 1e-9);
    assertEquals(471.2, budget(chain, "vocal-stream").delay().samples(), 1e-9);
    assertEquals(5, chain.reference().orElseThrow().send());
    assertEquals(6, chain.path("vocal-house").patch().orElseThrow().send());
    assertEquals(9, chain.path("vocal-stream").patch().orElseThrow().returned());
  }

  @Test
  void emptyLinesGiveAFileThatChecksOut() {
    Chain chain = chain(Map.of());
    assertEquals(12 + 38.4 + 128 + 12, budget(chain, "vocal-house").delay().samples(), 1e-9);
    assertTrue(
        ChainCheck.of(chain).stream().noneMatch(f -> f.kind() == CheckFinding.Kind.WRONG),
        ChainCheck.of(chain).toString());
    assertTrue(ChainDraft.yaml(Map.of()).lines().filter(line -> line.contains("#")).count() > 5);
  }

  @Test
  void smallestRigHasNoHostNoReferenceAndOneListener() {
    Chain chain =
        chain(
            Map.of(
                DraftQuestion.BLOCK_SIZE, "0",
                DraftQuestion.LISTENERS, "wedge",
                DraftQuestion.REFERENCE, "0"));
    assertFalse(chain.countsBlocks());
    assertEquals(Set.of("vocal-wedge"), chain.paths().keySet());
    assertTrue(chain.reference().isEmpty() && chain.mixes().isEmpty());
  }

  @Test
  void asksOnlyWhatTheAnswersLeaveOpen() {
    assertFalse(DraftQuestion.HOST_BLOCKS.isAsked(Map.of(DraftQuestion.BLOCK_SIZE, "0")));
    assertTrue(DraftQuestion.HOST_BLOCKS.isAsked(Map.of()));
    assertFalse(DraftQuestion.THROW_METRES.isAsked(Map.of(DraftQuestion.LISTENERS, "in-ear")));
    assertTrue(DraftQuestion.THROW_METRES.isAsked(Map.of(DraftQuestion.LISTENERS, "in-ear house")));
  }

  @ParameterizedTest
  @EnumSource(DraftQuestion.class)
  void usualAnswerIsOne(DraftQuestion question) {
    assertEquals(Optional.empty(), question.refuse(question.usual()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "NAME | a\"b | without quotation marks",
        "SAMPLE_RATE | 96 | from 8000 to 768000",
        "SAMPLE_RATE | 48k | whole number",
        "DESK_MS | 0,9 | did you mean 0.9? write a decimal point",
        "DESK_MS | -1 | a number such as 0.8",
        "DESK_MS | 1 ms | without a unit",
        "BLOCK_SIZE | 70000 | from 0 to 65536",
        "LISTENERS | house, drummer | 'drummer' is no listener: write any of in-ear, wedge",
        "REFERENCE | 2000 | from 0 to 1020"
      })
  void whatIsNoAnswerIsRefused(DraftQuestion question, String answer, String why) {
    String refused = question.refuse(answer).orElseThrow();
    assertTrue(refused.contains(why), refused);
    assertThrows(IllegalArgumentException.class, () -> ChainDraft.yaml(Map.of(question, answer)));
  }
}
