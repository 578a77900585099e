package dev.loopgauge.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine.Help.Ansi;

class ColourTest {
  private static final String ESCAPE = "\u001B[";

  /** 20 ms to the house: over its 15 ms. */
  private static final String CHAIN =
      """
      sample-rate: 48000
      stages: { desk: { ms: 20 } }
      paths: { singer: { listener: house, stages: [desk] } }
      """;

  @TempDir private Path folder;
  private String chain = "";

  @BeforeEach
  void writeChain() throws IOException {
    chain = Files.writeString(folder.resolve("chain.yaml"), CHAIN).toString();
  }

  private String budget(boolean terminal, Map<String, String> environment, String... options) {
    String[] args = new String[options.length + 2];
    args[0] = "budget";
    args[1] = chain;
    System.arraycopy(options, 0, args, 2, options.length);
    Run run = Run.on(terminal, "", environment, args);
    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.err());
    return run.out();
  }

  @Test
  void verdictsAreColouredOnATerminalOnly() {
    assertTrue(budget(true, Map.of()).contains(ESCAPE));
    assertFalse(budget(false, Map.of()).contains(ESCAPE));
  }

  @Test
  void environmentCanTurnColourOff() {
    assertFalse(budget(true, Map.of("NO_COLOR", "1")).contains(ESCAPE));
    assertFalse(budget(true, Map.of("TERM", "dumb")).contains(ESCAPE));
    assertTrue(budget(true, Map.of("NO_COLOR", "")).contains(ESCAPE));
  }

  @Test
  void optionHasTheLastWord() {
    assertTrue(budget(false, Map.of("NO_COLOR", "1"), "--color", "always").contains(ESCAPE));
    assertFalse(budget(true, Map.of(), "--color=never").contains(ESCAPE));
    assertFalse(budget(false, Map.of(), "--color=auto").contains(ESCAPE));
  }

  @Test
  void colourOnlyRepeatsWhatTheWordsSay() {
    String coloured = budget(false, Map.of(), "--color=always");
    assertEquals(budget(false, Map.of()), coloured.replaceAll("\u001B\\[[0-9;]*m", ""));
  }

  @Test
  void documentsForScriptsAreNeverColoured() {
    assertFalse(budget(true, Map.of(), "--json", "--color=always").contains(ESCAPE));
  }

  @Test
  void helpFollowsTheSameRules() {
    assertTrue(Run.on(true, "", Map.of(), "budget", "--help").out().contains(ESCAPE));
    assertFalse(Run.of("budget", "--help").out().contains(ESCAPE));
  }

  @ParameterizedTest
  @CsvSource({
    "WITHIN: it is, 32",
    "CAUTION: it is, 33",
    "OVER by 7.4 ms, 31",
    "LATE by 128 samples, 31"
  })
  void goodDoubtfulAndBadLookDifferent(String text, int code) {
    String painted = Colour.paint(text, Ansi.ON);
    assertTrue(painted.contains(ESCAPE + code + "m"), painted);
  }

  @Test
  void otherColoursAreRefused() {
    Run run = Run.of("budget", chain, "--color=sometimes");
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().contains("expected auto, always or never, found 'sometimes'"), run.err());
  }
}
