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

class CheckCommandTest {
  private static final String WHOLE =
      """
      chain: Mühlbach
      sample-rate: 48000
      block-size: 64
      reference: { send: 1, return: 1 }
      stages:
        desk: { ms: 1, tolerance-ms: 0.1 }
        host: { blocks: 2 }
      paths:
        ears: { listener: in-ear, stages: [desk], patch: { send: 2, return: 2 } }
        main:
          { listener: house, direct-metres: 3, stages: [desk, host], patch: { send: 3, return: 3 } }
      """;

  @TempDir private Path folder;

  @Test
  void aWholeFileIsClean() throws IOException {
    Run run = check(WHOLE);
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals("CLEAN: nothing is wrong or missing in rig.yaml.\n", run.out());
    Run json = check(WHOLE, "--json");
    assertEquals(
        Map.of(
            "schema", 1,
            "command", "check",
            "outcome", "clean",
            "file", "rig.yaml",
            "chain", "Mühlbach",
            "notices", List.of()),
        json.json());
  }

  @Test
  void saysWhatIsWrongThenWhatIsMissing() throws IOException {
    Run run =
        check(
            WHOLE
                .replace("send: 3, return: 3", "send: 3, return: 2")
                .replace("direct-metres: 3, ", ""));
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals(
        """
        CHECK: 1 thing is wrong, 1 missing in rig.yaml.
          wrong        ears, main are all on return 2.
          try          give each path a return of its own
          missing      main is a house path without its direct sound.
          try          add direct-metres, or a loudspeaker and positions
        """,
        run.out());
  }

  @Test
  void aHintThatGoesForManyIsSaidOnce() throws IOException {
    Run run = check(WHOLE.replaceAll(", patch: \\{[^}]*\\}", ""));
    assertEquals(
        """
        CHECK: 2 things are missing in rig.yaml.
          missing      ears has no patch: a round leaves it out.
          missing      main has no patch: a round leaves it out.
          try          add patch: { send: 2, return: 2 }
        """,
        run.out());
  }

  @Test
  void documentsNameNoFolder() throws IOException {
    Run run = check(WHOLE.replace("block-size: 64", "block-size: 63"), "--json");
    assertEquals("notices", run.json().get("outcome"));
    Map<?, ?> notice = (Map<?, ?>) ((List<?>) run.json().get("notices")).get(0);
    assertEquals("wrong", notice.get("kind"));
    assertEquals("rig.yaml:3:13: block-size 63 is unusual", notice.get("text"));
    assertFalse(run.out().contains(folder.toString()), run.out());
  }

  @Test
  void linesFitTheScreen() throws IOException {
    Run run =
        check(
            WHOLE.replace(
                "host: { blocks: 2 }",
                "host: { blocks: 2, compensated: unknown }\n  unused-stage-of-some-length: { ms: 1 }"));
    assertTrue(run.out().contains("The stage 'unused-stage-of-some-length' is never used."));
    assertTrue(run.out().lines().allMatch(line -> line.length() <= 80), run.out());
  }

  @Test
  void anUnusableFileIsRefusedByLineAndColumn() throws IOException {
    Run run = check(WHOLE.replace("sample-rate: 48000", "sample-rate: 96"));
    run.assertRefused("rig.yaml:2:14:");
    assertEquals(
        ExitCode.USAGE, Run.of("check", folder.resolve("none.yaml").toString()).exitCode());
  }

  private Run check(String yaml, String... more) throws IOException {
    Path file = Files.writeString(folder.resolve("rig.yaml"), yaml);
    return more.length == 0
        ? Run.of("check", file.toString())
        : Run.of("check", file.toString(), more[0]);
  }
}
