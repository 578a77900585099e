package dev.loopgauge.cli.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The state of the sources that campaigns on sound are dated by. */
final class SoundCommit {
  private static final String NONE = "0000000000000000";
  private static final List<String> SOURCES = List.of("capture", "measure", "job/live");

  private SoundCommit() {}

  /** The last commit that touched what plays and records; zeros without git. */
  static String last() throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("git", "log", "-1", "--format=%H", "--"));
    SOURCES.forEach(room -> command.add("src/main/java/dev/loopgauge/" + room));
    Process git = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(git.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
    return git.waitFor() == 0 && said.matches("[0-9a-f]{40,}") ? said : NONE;
  }
}
