package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.simulated.Pace;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.wiring.Adapters;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class WatchOutletsTest {
  @TempDir Path folder;
  private String chain = "";

  @BeforeEach
  void writeChain() throws IOException {
    chain =
        Files.writeString(
                folder.resolve("quarry.yaml"),
                """
                chain: Quarry Stage
                sample-rate: 48000
                reference: { send: 1, return: 1 }
                stages: { fixed: { samples: 100 } }
                paths:
                  other: { listener: stream, stages: [fixed], patch: { send: 2, return: 2 } }
                """)
            .toString();
  }

  private Run watch(String... more) {
    List<String> args = new ArrayList<>(List.of("watch", chain));
    args.addAll(List.of("--backend", "simulated", "--for", "16s"));
    args.addAll(List.of(more));
    return Run.on(
        false, "", Map.of(), Adapters.of(List::of, Pace.UNBOUND), args.toArray(String[]::new));
  }

  @Test
  @DisabledOnOs(value = OS.WINDOWS, disabledReason = "runs a program of Unix")
  void theCommandHearsWhatTheJsonLinesTell() throws IOException {
    Path file = folder.resolve("events.jsonl");
    Run run =
        watch(
            "--json",
            "--fault",
            "inverted@8",
            "--metrics",
            "0",
            "--on-event",
            "tee -a '" + file + "'");
    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.err());
    assertTrue(run.err().contains("Metrics at http://127.0.0.1:"), run.err());
    List<String> events = run.out().lines().filter(line -> line.contains("\"phase\":")).toList();
    assertEquals(1, events.size(), run.out());
    assertEquals(events, Files.readAllLines(file));
  }

  @Test
  void refusesAPortThatIsTakenAndACommandThatIsNotThere() throws IOException {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      int port = taken.getLocalPort();
      watch("--metrics", "" + port).assertRefused("port " + port + " is taken");
    }
    watch("--on-event", "no-such-program-anywhere")
        .assertRefused("there is no program 'no-such-program-anywhere'");
    watch("--on-event", "tell 'it").assertRefused("a ' isn't closed");
  }
}
