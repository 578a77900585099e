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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From the answers to the budget. */
class NewCommandTest {
  private static final String USUAL = "\n".repeat(10);

  @TempDir private Path folder;

  /** 20 + 0.7 ms + 3 x 128 + 20 samples at 96 kHz. */
  @Test
  void answersBecomeAFileThatChecksOutAndIsBudgeted() {
    Run made =
        typed("Mühlbacher Bühne\n96000\n0.7\n20\n128\n3\nhouse, in-ear, stream\n2.5\n5\n5\n");
    assertEquals(ExitCode.GOOD, made.exitCode(), made.err());
    assertEquals(
        """
        Written: rig.yaml
          paths        vocal-house, vocal-in-ear, vocal-stream
          next         open it and put your own stages in; its comments say how
          then         `loopgauge check rig.yaml`, `loopgauge budget rig.yaml`
        """,
        made.out());
    Run check = Run.of("check", file(), "--json");
    assertEquals("clean", check.json().get("outcome"), check.out());
    assertEquals("Mühlbacher Bühne", check.json().get("chain"));
    Run budget = Run.of("budget", file(), "--json");
    assertEquals(ExitCode.GOOD, budget.exitCode(), budget.out());
    assertEquals(20 + 67.2 + 384 + 20, samples(budget, "vocal-house"), 1e-3);
    assertEquals(107.2, samples(budget, "vocal-in-ear"), 1e-3);
  }

  @Test
  void emptyLinesTakeTheUsualAnswers() throws IOException {
    Run made = typed(USUAL);
    assertEquals(ExitCode.GOOD, made.exitCode(), made.err());
    assertTrue(made.err().contains("What is the rig called? [My rig]\n"), made.err());
    assertEquals("clean", Run.of("check", file(), "--json").json().get("outcome"));
    assertEquals(ExitCode.GOOD, Run.of("budget", file()).exitCode());
    assertTrue(Files.readString(folder.resolve("rig.yaml")).contains("# Hz, one word clock"));
  }

  @Test
  void asksNothingThatTheAnswersLeaveNoPlaceFor() {
    Run made = typed("Small\n\n\n\n0\nwedge\n1\n");
    assertEquals(ExitCode.GOOD, made.exitCode(), made.err());
    assertFalse(made.err().contains("How many blocks"), made.err());
    assertFalse(made.err().contains("front row"), made.err());
    assertEquals("clean", Run.of("check", file(), "--json").json().get("outcome"));
  }

  @Test
  void aWrongAnswerIsAskedAgainWithASentence() {
    Run made = typed("Small\n96\n48k\n48000\n0,9\n0.9\n" + USUAL);
    assertEquals(ExitCode.GOOD, made.exitCode(), made.err());
    assertTrue(made.err().contains("'96': write a whole number from 8000 to 768000\n"), made.err());
    assertTrue(made.err().contains("'0,9': did you mean 0.9? write a decimal point\n"), made.err());
    Run budget = Run.of("budget", file(), "--json");
    assertEquals(12 + 43.2 + 12, samples(budget, "vocal-in-ear"), 1e-3);
  }

  @Test
  void afterAFewWrongAnswersItGivesUp() {
    Run made = typed("Small\n1\n2\n3\n4\n48000\n" + USUAL);
    assertEquals(ExitCode.USAGE, made.exitCode());
    assertTrue(made.err().contains("no answer to 'At which sample rate"), made.err());
    assertFalse(Files.exists(folder.resolve("rig.yaml")));
  }

  @Test
  void whoLeavesInTheMiddleLeavesNoFile() {
    Run made = typed("Small\n48000\n");
    assertEquals(ExitCode.USAGE, made.exitCode());
    assertTrue(
        made.err().contains("the answers ended before 'How long does the desk take"), made.err());
    assertFalse(Files.exists(folder.resolve("rig.yaml")));
  }

  @Test
  void withoutATerminalAnswersComeFromStandardInput() {
    Run made = Run.on(false, USUAL, Map.of(), "new", "-o", file(), "--json");
    assertEquals(ExitCode.GOOD, made.exitCode(), made.err());
    assertEquals("written", made.json().get("outcome"));
    assertEquals("rig.yaml", made.json().get("file"));
    assertEquals(List.of("vocal-house", "vocal-in-ear"), made.json().get("paths"));
  }

  /** The next line would be taken for the answer to the same question. */
  @Test
  void withoutATerminalAWrongAnswerEndsIt() {
    Run made = Run.on(false, "Small\n96\n48000\n" + USUAL, Map.of(), "new", "-o", file());
    assertEquals(ExitCode.USAGE, made.exitCode());
    assertTrue(made.err().contains("write a whole number from 8000"), made.err());
    assertFalse(Files.exists(folder.resolve("rig.yaml")));
  }

  @Test
  void aFileThatIsThereIsLeftAloneAndNothingIsAsked() throws IOException {
    Files.writeString(folder.resolve("rig.yaml"), "mine");
    Run made = typed(USUAL);
    made.assertRefused("rig.yaml exists already");
    assertEquals("mine", Files.readString(folder.resolve("rig.yaml")));
  }

  @Test
  void lettersThatCanNotBeReadAreRefused() {
    Run made = typed("M\uFFFDhle\nMuehle\n" + USUAL);
    assertEquals(ExitCode.GOOD, made.exitCode(), made.err());
    assertTrue(made.err().contains("is the terminal set to UTF-8?"), made.err());
  }

  private Run typed(String answers) {
    return Run.on(true, answers, Map.of(), "new", "-o", file());
  }

  private String file() {
    return folder.resolve("rig.yaml").toString();
  }

  private static double samples(Run budget, String path) {
    for (Object entry : (List<?>) budget.json().get("paths")) {
      if (path.equals(((Map<?, ?>) entry).get("name"))) {
        return ((Number) ((Map<?, ?>) entry).get("delaySamples")).doubleValue();
      }
    }
    throw new AssertionError("no path " + path + " in " + budget.out());
  }
}
