package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.terminal.ExitCode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is typed comes through whole or is refused. */
class LettersTest {
  @TempDir Path folder;

  @Test
  void aLostLetterIsRefusedBeforeAnythingElse() {
    Run run = Run.of("journal", "list", "--show", "B\uFFFD\uFFFDhne");
    run.assertRefused("'B?hne' has letters that this shell's language setting lost");
    assertTrue(run.err().contains("LC_ALL=C.UTF-8"), run.err());
  }

  @Test
  void aLostLetterInAnAnswerIsRefused() {
    Run run = Run.on(true, "B\uFFFDhne\n", Map.of(), "new", "-o", folder.resolve("a.yaml") + "");
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().contains("letters that this shell's language setting lost"), run.err());
    assertFalse(Files.exists(folder.resolve("a.yaml")));
  }
}
