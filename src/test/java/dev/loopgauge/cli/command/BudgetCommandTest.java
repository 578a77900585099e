package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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

class BudgetCommandTest {
  private static final String CHAIN =
      """
      chain: Quay Stage
      sample-rate: 48000
      block-size: 64
      stages:
        box: { samples: 12, tolerance-samples: 1 }
        desk: { ms: 1 }
        host: { blocks: 2 }
      paths:
        singer: { listener: wedge, stages: [box, desk, host] }
        singer-stream: { listener: stream, stages: [box, desk] }
      """;

  @TempDir private Path folder;
  private String chain = "";

  @BeforeEach
  void writeChain() throws IOException {
    chain = write("chain.yaml", CHAIN);
  }

  private String write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  private static double samples(Run run, String path) {
    for (Object entry : (List<?>) run.json().get("paths")) {
      Map<?, ?> budget = (Map<?, ?>) entry;
      if (path.equals(budget.get("name"))) {
        return ((Number) budget.get("delaySamples")).doubleValue();
      }
    }
    throw new AssertionError("no path " + path + " in " + run.out());
  }

  @Test
  void predictsEachPath() {
    Run run = Run.of("budget", chain, "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertEquals("", run.err());
    assertEquals("predicted", run.json().get("outcome"));
    assertEquals(12 + 48 + 128, samples(run, "singer"));
    assertEquals(12 + 48, samples(run, "singer-stream"));
  }

  @Test
  void blocksScaleWithTheBlockAndMillisecondsWithTheRate() {
    assertEquals(
        12 + 48 + 256, samples(Run.of("budget", chain, "--block-size=128", "--json"), "singer"));
    assertEquals(
        12 + 96 + 128, samples(Run.of("budget", chain, "--sample-rate=96000", "--json"), "singer"));
  }

  @Test
  void showsTheStagesOfTheAskedPathAlone() {
    Run run = Run.of("budget", chain, "--path", "singer");
    assertTrue(run.out().contains("host"), run.out());
    assertFalse(run.out().contains("singer-stream"), run.out());
  }

  @Test
  void anUnknownPathIsToldTheNearest() {
    Run run = Run.of("budget", chain, "--path", "singr");
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals("", run.out());
    assertTrue(run.err().contains("'singer'"), run.err());
  }

  @Test
  void aWrongChainIsRefusedWhereItIsWrong() throws IOException {
    String wrong = write("wrong.yaml", CHAIN.replace("ms: 1", "msec: 1"));
    Run run = Run.of("budget", wrong, "--json");
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals("unusable-chain", run.error("code"));
    assertTrue(run.error("text").toString().startsWith("wrong.yaml:6:"), run.out());
  }

  @Test
  void whatIsNoChainFileIsRefused() throws IOException {
    Path binary = Files.write(folder.resolve("sound.wav"), new byte[] {'R', (byte) 0xFF, 0});
    for (String file : List.of("nowhere.yaml", folder.toString(), binary.toString())) {
      Run run = Run.of("budget", file);
      assertEquals(ExitCode.USAGE, run.exitCode(), file);
      assertTrue(run.err().contains(file), run.err());
      assertEquals(2, run.err().lines().count(), run.err());
    }
  }

  @Test
  void wrongArgumentsAreRefused() {
    assertEquals(ExitCode.USAGE, Run.of("budget").exitCode());
    for (String wrong : List.of("--block-size=0", "--block-size=1000000", "--sample-rate=1")) {
      assertEquals(ExitCode.USAGE, Run.of("budget", chain, wrong).exitCode(), wrong);
    }
  }

  @Test
  void namesBeyondAsciiArriveWhole() throws IOException {
    String umlaut = write("bühne.yaml", CHAIN.replace("Quay Stage", "Große Bühne"));
    assertTrue(Run.of("budget", umlaut).out().contains("\nGroße Bühne · 48 kHz"));
  }
}
