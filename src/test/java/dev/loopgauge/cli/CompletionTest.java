package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The completion script, sourced by a real shell and asked as a shell asks it. */
class CompletionTest {
  @TempDir Path folder;

  @Test
  void completesCommands() throws Exception {
    assertEquals(List.of("measure"), completed("loopgauge mea"));
    assertEquals(List.of("pairs", "patch"), completed("loopgauge pa"));
  }

  @Test
  void completesOptionsOfACommand() throws Exception {
    assertTrue(completed("loopgauge measure --ref").contains("--reference-send"));
    assertTrue(completed("loopgauge follow --wi").contains("--window"));
  }

  private List<String> completed(String typed) throws IOException, InterruptedException {
    Run script = Run.of("completion");
    assertEquals(ExitCode.GOOD, script.exitCode(), script.err());
    Path file = Files.writeString(folder.resolve("completion"), script.out());
    List<String> words = List.of(typed.split(" "));
    String ask =
        """
        source '%s'
        COMP_WORDS=(%s)
        COMP_CWORD=%d
        COMP_LINE='%s'
        COMP_POINT=%d
        _complete_loopgauge
        printf '%%s\\n' "${COMPREPLY[@]}"
        """
            .formatted(file, typed, words.size() - 1, typed, typed.length());
    Process bash =
        new ProcessBuilder("bash", "-c", ask)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    String said = new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, bash.waitFor(), said);
    return said.lines().map(String::strip).filter(line -> !line.isEmpty()).sorted().toList();
  }
}
