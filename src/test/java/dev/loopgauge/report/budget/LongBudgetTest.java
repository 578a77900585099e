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
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What is told of rigs with many paths. */
class LongBudgetTest {
  private static final List<String> LISTENERS = List.of("house", "in-ear", "wedge", "stream");

  /**
   * A rig with this many paths, four of each input; every 10th in-ear runs through a host that
   * makes it late.
   */
  private static BudgetDocument document(int count) {
    String paths =
        IntStream.range(0, count)
            .mapToObj(LongBudgetTest::path)
            .collect(Collectors.joining("\n", "paths:\n", "\n"));
    String mix =
        IntStream.range(0, count)
            .mapToObj(i -> "p" + i)
            .collect(Collectors.joining(", ", "mixes:\n  all: [", "]\n"));
    String stages = "stages: { desk: { ms: 1 }, host: { ms: 5 }, wall: { ms: 60 } }\n";
    try {
      Chain chain = ChainParser.parse("sample-rate: 48000\n" + stages + paths + mix, "many.yaml");
      return BudgetDocument.of(chain, ChainBudget.all(chain), PictureRule.EBU_R37);
    } catch (ChainFormatException e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  private static String path(int i) {
    String stages = i % 40 == 1 ? "desk, host" : i % 4 == 3 ? "desk, wall" : "desk";
    return "  p%d: { listener: %s, input: in-%d, stages: [%s] }"
        .formatted(i, LISTENERS.get(i % 4), i / 4, stages);
  }

  private static String words(String text) {
    return text.replaceAll("\\s+", " ");
  }

  @Test
  void thousandPathsAreToldOnTwoScreens() {
    String text = document(1000).text();
    assertTrue(text.lines().count() <= 80, text);
    text.lines().forEach(line -> assertTrue(line.length() <= 80, line));
    String words = words(text);
    assertTrue(words.startsWith("OVER the limit: p1, p41 and 23 more by 1.0 ms. "), text);
    assertTrue(words.contains(" 1000 paths: 25 over, 0 caution, 975 within. "), text);
    assertTrue(words.contains(" --full lists all of them."), text);
  }

  @Test
  void worstPathsComeFirstAndEqualOnesShareARow() {
    String words = words(document(1000).text());
    int over = words.indexOf(" p1 +24 in-ear 6.000 288.0 0 2.06 6.8 OVER by 1.0 ms ");
    int within = words.indexOf(" p0 +249 house 1.000 48.0 0 0.34 1.1 within ");
    assertTrue(over > 0 && over < within, words);
  }

  /** Of each input 3 pairs have the stream 60 ms, or 55 ms, behind; of 25 one path is 5 ms late. */
  @Test
  void pairsOfAMixAreCountedAndTheWorstComeFirst() {
    String words = words(document(1000).text());
    assertTrue(
        words.contains("Heard together, all: 1500 pairs carry one input: 750 ECHO, 50 COLOURS, "),
        words);
    int echo = words.indexOf(" p0 p3 +724 60.000 ");
    int colours = words.indexOf(" p0 p1 +49 5.000 ");
    assertTrue(echo > 0 && echo < colours, words);
  }

  @Test
  void fullTextAndDocumentListEveryPathAndPair() throws IOException {
    BudgetDocument document = document(1000);
    String full = document.inFull().text();
    assertFalse(full.contains(" more"), "shortened");
    int pathsAndPairs = 1000 + 1500;
    assertEquals(
        pathsAndPairs,
        full.lines().filter(line -> line.matches("  p\\d+ +\\S+ +\\d+\\.\\d{3} .*")).count());
    Map<?, ?> json = JSON.std.mapFrom(Json.write(document));
    assertEquals(1000, ((List<?>) json.get("paths")).size());
    Map<?, ?> mix = (Map<?, ?>) ((List<?>) json.get("mixes")).get(0);
    assertEquals(1500, ((List<?>) mix.get("pairs")).size());
    assertFalse(mix.containsKey("pairsLeftOut"));
    assertEquals(Json.write(document), Json.write(document.inFull()));
  }

  @Test
  void shortBudgetsAreToldInFull() {
    BudgetDocument document = document(8);
    assertEquals(document.inFull().text(), document.text());
  }
}
