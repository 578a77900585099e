package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.cli.Jar;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A round of eight paths through JACK on a real server, whole and stopped by Ctrl-C. */
@NeedsAudioServer
@Timeout(300)
@SuppressWarnings("try")
class JackRoundIT {
  private static final int RATE = 48_000;
  private static final int PATHS = 8;

  /** A busy machine loses sound now and then; then a path has no number, and is measured again. */
  private static final int MOST_AGAIN = 6;

  @TempDir Path folder;

  /**
   * Send and return 1 are the cable; path i is on send and return i + 1 and takes 100 i samples.
   */
  private Path chain() throws Exception {
    StringBuilder yaml =
        new StringBuilder(
            """
            chain: Quarry Stage
            sample-rate: 48000
            block-size: 1024
            reference: { send: 1, return: 1 }
            stages:
            """);
    IntStream.rangeClosed(1, PATHS)
        .forEach(i -> yaml.append("  s%d: { samples: %d }%n".formatted(i, 100 * i)));
    yaml.append("paths:\n");
    IntStream.rangeClosed(1, PATHS)
        .forEach(
            i ->
                yaml.append(
                    ("  path-%1$d: { listener: stream, stages: [s%1$d],"
                            + " patch: { send: %2$d, return: %2$d } }%n")
                        .formatted(i, i + 1)));
    return Files.writeString(folder.resolve("quarry.yaml"), yaml);
  }

  private static DelayClient rig(AudioServer server) throws Exception {
    return DelayClient.start(
        server,
        "rig",
        IntStream.rangeClosed(0, PATHS)
            .mapToObj(i -> DelayLine.of(100 * i))
            .toArray(DelayLine[]::new));
  }

  private Process start(AudioServer server, Path err, String... args) throws Exception {
    Map<String, String> environment = new HashMap<>(server.environment());
    environment.put("LOOPGAUGE_DATA", folder.resolve("data").toString());
    List<String> all = new ArrayList<>(Arrays.asList(args));
    all.addAll(List.of("--backend", "jack", "--output", "rig", "--input", "rig", "--yes"));
    all.addAll(List.of("--json", "--seconds", "0.3", "--max-delay", "0.1", "--repeat", "1"));
    return Jar.start(environment, err, all.toArray(String[]::new));
  }

  private static List<Map<?, ?>> paths(Run run) {
    return ((List<?>) run.json().get("paths"))
        .stream().<Map<?, ?>>map(path -> (Map<?, ?>) path).toList();
  }

  private static double delay(Map<?, ?> path) {
    Map<?, ?> document = (Map<?, ?>) path.get("document");
    Map<?, ?> measurement = (Map<?, ?>) document.get("measurement");
    return ((Number) measurement.get("delaySamples")).doubleValue();
  }

  @Test
  void measuresEightPathsInOneSession() throws Exception {
    Path err = folder.resolve("err");
    String chain = chain().toString();
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, 1024);
        DelayClient rig = rig(server)) {
      long before = System.nanoTime();
      Run run = Jar.end(start(server, err, "round", chain), err);
      double round = (System.nanoTime() - before) / 1e9;
      for (int again = 0; again < MOST_AGAIN && run.out().contains("\"dropout\""); again++) {
        run = Jar.end(start(server, err, "round", chain), err);
      }

      assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
      assertEquals(PATHS, paths(run).size());
      for (int i = 1; i <= PATHS; i++) {
        assertEquals(100 * i, delay(paths(run).get(i - 1)), 0.05, run.out());
      }
      long one = System.nanoTime();
      Jar.end(start(server, err, "measure", "--chain", chain, "--path", "path-1"), err);
      double single = (System.nanoTime() - one) / 1e9;
      System.out.printf(
          "a round of %d paths took %.1f s; %d single measurements of %.1f s would take %.1f s%n",
          PATHS, round, PATHS, single, PATHS * single);
    }
  }

  @Test
  void ctrlCKeepsWhatIsDone() throws Exception {
    Path err = folder.resolve("err");
    Path journal = folder.resolve("show.db");
    String[] kept = {"--journal=" + journal, "--show", "S", "--when", "before"};
    String[] args =
        Stream.of(new String[] {"round", chain().toString()}, kept)
            .flatMap(Stream::of)
            .toArray(String[]::new);
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, 1024);
        DelayClient rig = rig(server)) {
      Process round = start(server, err, args);
      while (round.isAlive() && !Files.readString(err).contains("path-2  ")) {
        Thread.sleep(50);
      }
      new ProcessBuilder("kill", "-INT", String.valueOf(round.pid())).start().waitFor();
      Run stopped = Jar.end(round, err);

      assertEquals(130, stopped.exitCode(), stopped.out() + stopped.err());
      assertEquals("it was interrupted", stopped.json().get("stopped"));
      int done = paths(stopped).size();
      assertTrue(done >= 1 && done < PATHS, stopped.out());
      Run list = Run.of("journal", "list", "--journal=" + journal, "--json");
      assertTrue(list.out().contains("path-1"), list.out() + list.err());

      String[] goOn =
          Stream.of(args, new String[] {"--continue"}).flatMap(Stream::of).toArray(String[]::new);
      Run rest = Jar.end(start(server, err, goOn), err);
      for (int again = 0; again < MOST_AGAIN && rest.out().contains("\"dropout\""); again++) {
        rest = Jar.end(start(server, err, goOn), err);
      }
      assertEquals(PATHS, paths(rest).size(), rest.out() + rest.err());
      assertEquals(ExitCode.GOOD, rest.exitCode(), rest.out() + rest.err());
    }
  }
}
