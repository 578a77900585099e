package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.journal.store.Journals;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A show's name as a shell hands it on in one language setting or another. */
@Timeout(120)
class LettersIT {
  /**
   * UTF-8 for a show's name, so that it reaches the shell as bytes whatever this process speaks.
   */
  private static final String SHOW = "$(printf 'B\\303\\274hne')";

  @TempDir Path folder;

  @BeforeEach
  void record() throws Exception {
    Recorded.write(folder.resolve("rec.wav"), Recorded.sweep(0, 1, 1), Recorded.sweep(100, 0.5, 2));
  }

  /** Was stored as U+FFFD for ever. */
  @ParameterizedTest
  @ValueSource(strings = {"C", "POSIX"})
  void aShellThatCanNotSayTheNameKeepsNothing(String locale) throws Exception {
    Run run = keep(locale);
    assertEquals(ExitCode.USAGE, run.exitCode(), run.out() + run.err());
    assertTrue(run.err().contains("language setting lost"), run.err());
    assertFalse(Files.exists(folder.resolve("journal.db")));
  }

  @Test
  void aShellThatCanSayTheNameKeepsIt() throws Exception {
    Run run = keep("C.UTF-8");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertTrue(run.out().contains("MEASURED"), run.out());
    try (Journal journal =
        Journals.openExisting(folder.resolve("journal.db").toString(), Map.of())) {
      assertEquals("B\u00FChne", journal.headings(Selection.ALL).get(0).show());
    }
  }

  /** Java finds no file of such a folder, and each name of a place has other letters. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "cd $a && LC_ALL=C exec \"$0\" -jar \"$1\" pairs ../rec.wav",
        "LOOPGAUGE_DATA=\"$PWD/$a\" LC_ALL=C exec \"$0\" -jar \"$1\" journal list",
        "LOOPGAUGE_JOURNAL=\"$PWD/$a/j\" LC_ALL=C exec \"$0\" -jar \"$1\" journal list",
      })
  void foldersThatTheShellCanNotSayAreNamedAsThat(String command) throws Exception {
    String made = "a=$(printf 'h\\303\\244'); mkdir \"$a\"; ";
    Run run = run(made + command);
    assertTrue(run.err().contains("language setting lost"), run.err());
    assertTrue(run.err().contains("LC_ALL=C.UTF-8"), run.err());
    assertTrue(run.exitCode() != ExitCode.GOOD, run.out());
  }

  private Run keep(String locale) throws Exception {
    return run(
        "LC_ALL=%s exec \"$0\" -jar \"$1\" analyze --reference=rec.wav".formatted(locale)
            + " --return-channel=2 --journal=journal.db --when=before --show=\""
            + SHOW
            + "\"");
  }

  /** Runs a line of a shell that has Java as $0 and the jar as $1. */
  private Run run(String line) throws Exception {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Path err = folder.resolve("err");
    List<String> command =
        List.of(
            "sh",
            "-c",
            line,
            java,
            Path.of(System.getProperty("loopgauge.jar")).toAbsolutePath() + "");
    Process process =
        new ProcessBuilder(command).directory(folder.toFile()).redirectError(err.toFile()).start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Run(process.waitFor(), out, Files.readString(err));
  }
}
