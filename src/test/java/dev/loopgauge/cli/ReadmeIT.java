package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.javasound.AlsaRig;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Runs each command that README.md shows, in its order, in a clean folder, with a rig patched as
 * README draws it. The test command itself is what runs this.
 */
@NeedsAudioServer
@Timeout(600)
class ReadmeIT {
  private static final Pattern BLOCK = Pattern.compile("```sh\\n(.*?)```", Pattern.DOTALL);
  private static final Pattern WORD = Pattern.compile("(?:\"[^\"]*\"|[^ ])+");
  private static final String BUILD =
      "mvn -B -q package -DskipTests && java -jar target/loopgauge.jar ";
  private static final String TEST = "mvn -B verify";
  private static final String ALIAS = "alias loopgauge=";
  private static final String COMPLETION = "eval \"$(loopgauge completion)\"";

  /** Commands that ask for Enter before they play. */
  private static final Pattern PLAYS = Pattern.compile("(?:measure|patch|soak|host) .*");

  /** The loop of the path that README measures, in whole samples; its budget is 371.4. */
  private static final int LOOP = 371;

  /** An empty line takes the usual answer. */
  private static final String USUAL_ANSWERS = "\n".repeat(10);

  /** What ends otherwise than well, on purpose. */
  private static final Map<String, Integer> EXIT_CODES =
      Map.of("analyze --reference loopgauge-demo/1/block-128.wav --chain", ExitCode.OUTSIDE);

  @TempDir Path folder;

  @Test
  void eachCommandDoesWhatItSays() throws Exception {
    List<String> commands = commands();
    assertTrue(commands.size() >= 10, commands::toString);
    assertTrue(commands.contains(TEST), commands::toString);
    assertTrue(commands.contains(COMPLETION), commands::toString);
    try (AlsaRig rig =
        AlsaRig.start(folder, Cycles.STRETCH, 1024, DelayLine.of(0), DelayLine.of(LOOP))) {
      for (String command : commands) {
        if (command.equals(COMPLETION)) {
          assertCompletes("meas", "measure");
          assertCompletes("soak --fo", "--for");
        } else if (!command.equals(TEST) && !command.startsWith(ALIAS)) {
          Run run = run(rig, arguments(command));
          assertEquals(exitCode(command), run.exitCode(), command + "\n" + run.out() + run.err());
        }
      }
    }
  }

  static List<String> commands() throws IOException {
    Matcher blocks = BLOCK.matcher(Files.readString(Path.of("README.md")));
    return blocks.results().flatMap(block -> block.group(1).lines()).toList();
  }

  /** The arguments of a command; the engineer's Enter is given by {@code --yes}. */
  private static String[] arguments(String command) {
    assertTrue(command.startsWith(BUILD) || command.startsWith("loopgauge "), command);
    String rest = command.replace(BUILD, "").replaceFirst("^loopgauge ", "");
    Stream<String> words = WORD.matcher(rest).results().map(word -> word.group().replace("\"", ""));
    return (PLAYS.matcher(rest).matches() ? Stream.concat(words, Stream.of("--yes")) : words)
        .toArray(String[]::new);
  }

  private static int exitCode(String command) {
    return EXIT_CODES.entrySet().stream()
        .filter(entry -> command.contains(entry.getKey()))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse(ExitCode.GOOD);
  }

  /** Checks what bash, having run README's line, offers for the last word of a typed command. */
  private static void assertCompletes(String typed, String offered) throws Exception {
    String script =
        """
        set -e
        loopgauge() { $PROGRAM "$@"; }
        compopt() { :; } # only where a key was pressed
        %s
        COMP_WORDS=(loopgauge $TYPED); COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
        function=$(complete -p loopgauge | sed 's/.*-F \\([^ ]*\\).*/\\1/')
        set +e
        "$function" loopgauge "${COMP_WORDS[COMP_CWORD]}"
        echo "${COMPREPLY[@]}"
        """
            .formatted(COMPLETION);
    ProcessBuilder bash = new ProcessBuilder("bash", "-c", script).redirectErrorStream(true);
    bash.environment().putAll(Map.of("PROGRAM", String.join(" ", Jar.program()), "TYPED", typed));
    Process process = bash.start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), out);
    assertEquals(offered, out.strip(), typed);
  }

  private Run run(AlsaRig rig, String... arguments) throws Exception {
    Map<String, String> environment = new HashMap<>(rig.server().environment());
    environment.put("ALSA_CONFIG_PATH", rig.config().toString());
    environment.put("LOOPGAUGE_DATA", folder.resolve("data").toString());
    Path err = folder.resolve("err");
    Process process = Jar.start(folder, environment, err, arguments);
    if (arguments[0].equals("new")) {
      process.getOutputStream().write(USUAL_ANSWERS.getBytes(StandardCharsets.UTF_8));
    }
    return Jar.end(process, err);
  }
}
