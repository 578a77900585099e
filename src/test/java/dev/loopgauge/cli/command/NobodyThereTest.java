package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Each command that plays, run without a terminal, as by a script. */
class NobodyThereTest {
  private static final String CHAIN =
      """
      chain: Lantern
      sample-rate: 48000
      block-size: 64
      stages: { desk: { ms: 1 } }
      paths:
        vocal: { listener: house, stages: [desk], patch: { send: 2, return: 2 } }
      """;

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "measure --send 2 --return 2",
        "round CHAIN",
        "host --send 2 --return 2 --reported-samples 64",
        "host --send 2 --return 2 --states active,bypassed",
        "soak --for 10s --send 2 --return 2",
        "series --live --block-sizes 64,128 --send 2 --return 2",
        "patch --send 2 --return 2 --reference-send 1 --reference-return 1",
        "calibrate --send 1 --return 1"
      })
  void isEndedWithTwoBeforeADeviceIsTouched(String command) throws Exception {
    Path chain = Files.writeString(folder.resolve("chain.yaml"), CHAIN);
    ScriptedBackend card = LiveBench.backend("jack");
    String[] args = (command.replace("CHAIN", chain.toString()) + " --backend jack").split(" ");
    Run run = new LiveBench(folder).run(List.of(card), args);
    assertEquals(ExitCode.USAGE, run.exitCode(), run.out() + run.err());
    assertTrue(run.err().contains("at a terminal"), run.err());
    assertEquals(List.of(), card.requests());
  }
}
