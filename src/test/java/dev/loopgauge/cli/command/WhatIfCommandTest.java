package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WhatIfCommandTest {
  private static final String CHAIN =
      """
      chain: Quay Stage
      sample-rate: 48000
      block-size: 64
      stages:
        box: { samples: 12 }
        host: { blocks: 2 }
        limiter: { samples: 240, reported-by: host }
      paths:
        singer: { listener: house, stages: [box, host, limiter] }
        dry: { listener: in-ear, stages: [box] }
      """;

  @TempDir private Path folder;
  private String chain = "";

  @BeforeEach
  void writeChain() throws IOException {
    chain = Files.writeString(folder.resolve("chain.yaml"), CHAIN).toString();
  }

  private static double samples(Run run, String list, int path) {
    List<?> paths = (List<?>) run.json().get(list);
    return ((Number) ((Map<?, ?>) paths.get(path)).get("delaySamples")).doubleValue();
  }

  @Test
  void changesAddUp() {
    Run run =
        Run.of("budget", chain, "--change", "block-size=256", "--change=absent=limiter", "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertEquals("predicted", run.json().get("outcome"));
    assertEquals(12 + 512, samples(run, "paths", 0));
    assertEquals(12 + 128 + 240, samples(run, "before", 0));
    assertEquals(12, samples(run, "paths", 1));
    assertEquals(2, ((List<?>) run.json().get("changes")).size());
  }

  @Test
  void saysWhatIsDifferentAndByHowMuch() {
    Run run = Run.of("budget", chain, "--change=block-size=256");
    assertTrue(
        run.out().startsWith("What if the host runs at a block of 256 samples, not 64?"),
        run.out());
    assertTrue(run.out().contains("+8.000"), run.out());
    assertTrue(run.out().contains("block 256"), run.out());
  }

  /** (68 - 8) m are 174.8 ms; at 60 m, 2 m before the tower, (58 - 2) m are 163.2 ms. */
  @Test
  void saysWhatASeatHearsWhereOnlyThatChanges() throws IOException {
    String field =
        CHAIN.replace(
                "house, stages: [box, host, limiter]",
                "house, input: v, stages: [box], loudspeaker: main-pa")
            + """
              tower: { listener: house, input: v, stages: [box], loudspeaker: tower-pa }
            positions:
              far: { direct-metres: 70, throw-metres: { main-pa: 68, tower-pa: 8 } }
            """;
    String file = Files.writeString(folder.resolve("field.yaml"), field).toString();
    Run run = Run.of("budget", file, "--change=position.far.direct-metres=60");
    assertTrue(
        run.out()
            .replaceAll("\\s+", " ")
            .contains(
                "heard singer: 174.8 ms after tower at far now, then 163.2 ms after tower at far"),
        run.out());
  }

  @Test
  void showsTheStagesOfOnePathWithTheChange() {
    Run run = Run.of("budget", chain, "--path=singer", "--change=absent=limiter");
    assertTrue(run.out().contains("limiter (absent)"), run.out());
  }

  @ParameterizedTest
  @CsvSource({"absent=limitr, 'limiter'", "absnt=limiter, absent=limiter", "block-size=no, 128"})
  void aWrongChangeIsRefusedWithWhatToTry(String change, String hint) {
    Run run = Run.of("budget", chain, "--change", change, "--json");
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.error("hint").toString().contains(hint), run.out());
  }
}
