package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Jar;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A watch whose lines nobody reads any more, as in {@code watch ... | head -3}, ends in order. */
class UnreadWatchIT {
  @TempDir Path folder;

  @Test
  void endsOnceItsReaderWentAway() throws Exception {
    Path chain =
        Files.writeString(
            folder.resolve("harbour.yaml"),
            """
            chain: Harbour Theatre
            sample-rate: 8000
            block-size: 64
            reference: { send: 1, return: 1 }
            stages: { box: { samples: 12 } }
            paths: { house: { listener: house, stages: [box], patch: { send: 2, return: 2 } } }
            """);
    Path err = folder.resolve("err");
    Process watch =
        Jar.start(
            Map.of("LOOPGAUGE_DATA", folder.toString()),
            err,
            "watch",
            chain.toString(),
            "--backend=simulated",
            "--sample-rate=8000",
            "--json",
            "--for=10m");
    try (BufferedReader head = watch.inputReader()) {
      for (int line = 0; line < 3; line++) {
        String read = head.readLine();
        assertTrue(read != null && read.startsWith("{"), () -> read + " " + told(err));
      }
    }
    assertTrue(watch.waitFor(20, TimeUnit.SECONDS), "it still runs");
    assertEquals(ExitCode.GOOD, watch.exitValue(), told(err));
  }

  private static String told(Path err) {
    try {
      return Files.readString(err);
    } catch (IOException e) {
      return e.toString();
    }
  }
}
