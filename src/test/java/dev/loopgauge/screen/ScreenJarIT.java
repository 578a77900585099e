package dev.loopgauge.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The packaged screen, from its address to Ctrl-C. */
@Timeout(120)
class ScreenJarIT {
  @TempDir private Path folder;

  /** Nothing but these two lines is said on standard error: no library speaks for itself. */
  @Test
  void printsItsAddressServesItAndEndsWell() throws Exception {
    ProcessBuilder builder =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-jar",
            System.getProperty("loopgauge.jar"),
            "screen",
            Served.demoChain(folder).toString(),
            "--backend=simulated",
            "--port=0",
            "--json");
    builder.environment().put("LOOPGAUGE_DATA", folder.resolve("data").toString());
    Process screen = builder.start();
    try (BufferedReader err =
        new BufferedReader(
            new InputStreamReader(screen.getErrorStream(), StandardCharsets.UTF_8))) {
      Asker own = new Asker(err.readLine().substring("Open ".length()));
      assertEquals("Ctrl-C ends it.", err.readLine());
      try (Following page = new Following(own)) {
        page.until("Nothing measured yet.");
        own.post("/do/measure", "{\"path\":\"vocal-house\"}");
        page.until("1 of 4 paths measured");
      }
      new ProcessBuilder("kill", "-INT", String.valueOf(screen.pid())).start().waitFor();
      String out = new String(screen.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      Run run = new Run(screen.waitFor(), out, String.join("\n", err.lines().toList()));
      assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
      assertEquals("", run.err());
      assertEquals("ended", run.json().get("outcome"));
      assertEquals(4, ((List<?>) run.json().get("paths")).size());
      assertTrue(out.contains("\"WITHIN\""), out);
    }
  }
}
