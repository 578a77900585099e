package dev.loopgauge.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.screen.web.Sharing;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class ScreenCommandTest {
  @TempDir private Path folder;

  private static Run screen(Path chain, String... more) {
    List<String> all = new ArrayList<>(List.of("screen", chain.toString()));
    all.addAll(List.of(more));
    return Run.of(all.toArray(String[]::new));
  }

  @Test
  void aSecondScreenOnTheSamePortSaysSo() throws Exception {
    try (Served first = Served.demo(folder, Sharing.NOBODY)) {
      int port = new Asker(first.server.address()).port;
      Run second =
          screen(
              folder.resolve("lantern-theatre.yaml"),
              "--backend",
              "simulated",
              "--port",
              String.valueOf(port));
      assertEquals(ExitCode.USAGE, second.exitCode(), second.err());
      assertTrue(
          second.err().startsWith("port " + port + " is taken: is there a screen on it already?"),
          second.err());
      assertTrue(second.err().contains("--port " + (port + 1)), second.err());
    }
  }

  @Test
  void saysWhatItIsMissing() throws Exception {
    Path chain = Served.demoChain(folder);
    assertEquals(ExitCode.USAGE, screen(chain).exitCode());
    assertTrue(screen(chain).err().contains("expected --backend or --profile"));
    Run port = screen(chain, "--backend", "simulated", "--port", "65536");
    assertEquals(ExitCode.USAGE, port.exitCode());
    assertTrue(port.err().contains("expected a port from 0 to 65535"), port.err());
    assertEquals(
        ExitCode.USAGE, screen(folder.resolve("nowhere.yaml"), "--backend=simulated").exitCode());
  }
}
