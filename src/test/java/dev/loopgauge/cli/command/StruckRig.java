package dev.loopgauge.cli.command;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.cli.Jar;
import dev.loopgauge.cli.Run;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;

/** A rig of known delay on a real server, put up again where a fault has taken it down. */
final class StruckRig implements AutoCloseable {
  private static final int RATE = 48_000;
  private static final int BLOCK = 1_024;

  /** Nothing may take this long; many times what a busy computer needs for a measurement. */
  private static final int HUNG_SECONDS = 120;

  private final Path folder;
  private final SplittableRandom random;
  private AudioServer server;
  private DelayClient client;
  private int delay;

  StruckRig(Path folder, SplittableRandom random) {
    this.folder = folder;
    this.random = random;
  }

  /** Puts up what isn't there. */
  void putUp() throws IOException {
    if (server == null) {
      Cycles cycles = random.nextBoolean() ? Cycles.STRETCH : Cycles.LOSE;
      server = AudioServer.start(cycles, RATE, BLOCK);
    }
    if (client == null) {
      delay = random.nextInt(4_800);
      client = DelayClient.start(server, "rig", DelayLine.of(0), DelayLine.of(delay));
    }
  }

  /** Starts a measurement of it in a process of its own. */
  Process measure(int number) throws IOException {
    Map<String, String> environment = new HashMap<>(server.environment());
    environment.put("LOOPGAUGE_DATA", folder.resolve("data").toString());
    return Jar.start(
        environment,
        err(number),
        ("measure --backend jack --output rig --input rig --send 2 --return 2 --reference-send 1"
                + " --reference-return 1 --seconds 0.4 --repeat 2 --yes --json")
            .split(" ", -1));
  }

  /** Waits for a measurement to end. */
  Run end(Process process, int number) throws IOException, InterruptedException {
    process.getOutputStream().close();
    if (!process.waitFor(HUNG_SECONDS, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("hung: " + process.info().commandLine());
    }
    return Jar.end(process, err(number));
  }

  private Path err(int number) {
    return folder.resolve("err" + number);
  }

  AudioServer server() {
    return server;
  }

  DelayClient client() {
    return client;
  }

  /** How late the path is, in samples. */
  int delay() {
    return delay;
  }

  void killServer() {
    server.kill();
    server = null;
    killClient();
  }

  void killClient() {
    client.close();
    client = null;
  }

  @Override
  public void close() {
    if (client != null) {
      client.close();
    }
    if (server != null) {
      server.close();
    }
  }
}
