package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.jr.ob.JSON;
import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.audioserver.ProgrammeClient;
import dev.loopgauge.capture.javasound.AlsaRig;
import dev.loopgauge.cli.Jar;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Takes without number and a stream without end leave memory, threads, handles and ports as they
 * were. In each build a few takes and some seconds; {@code mvn -B verify -Pendurance} does a slice,
 * notes it in {@code loopgauge.endurance.log}, and adds one more each time it is run again without
 * {@code clean}.
 */
@NeedsAudioServer
class EnduranceIT {
  private static final int TAKES = Integer.getInteger("loopgauge.endurance.takes", 4);
  private static final int SECONDS = Integer.getInteger("loopgauge.endurance.seconds", 9);
  private static final boolean SLICE = TAKES > 4;
  private static final Path FOLDER =
      Path.of(System.getProperty("loopgauge.endurance.log", "target/endurance"));

  private static final int LOOKS = 10;
  private static final int LOOK_SECONDS = 60;
  private static final int WARM_MINUTES = 5;
  private static final int BLOCK = 1_024;
  private static final int DELAY = 228;

  /** A delay from programme is as sure as the programme allows; this is the least worth a step. */
  private static final double STREAM_TOLERANCE = 0.05;

  private static final String CHAIN =
      """
      chain: Quarry Stage
      sample-rate: 48000
      block-size: 64
      reference: { send: 1, return: 1 }
      stages:
        blocks: { blocks: 2 }
        fixed:  { samples: 100 }
      paths:
        moved: { listener: house, stages: [blocks, fixed], patch: { send: 2, return: 2 } }
      """;

  @TempDir Path folder;
  private EnduranceLog log = new EnduranceLog("", Path.of(""));

  /** Before, so that it names what was run. */
  @BeforeEach
  void openLog() throws Exception {
    log = EnduranceLog.in(FOLDER);
  }

  /** In each build one back end; the others take seconds more for each take. */
  static Stream<String> backends() {
    return SLICE ? Stream.of("jack", "drivers", "java-sound") : Stream.of("jack");
  }

  @ParameterizedTest
  @MethodSource("backends")
  void takesLeaveNothingBehind(String backend) throws Exception {
    Footprints footprints = new Footprints(1);
    String counts = "";
    try (AlsaRig rig =
        AlsaRig.start(folder, Cycles.STRETCH, BLOCK, DelayLine.of(0), DelayLine.of(DELAY))) {
      Process process = takes(rig, backend);
      try {
        int looks = Math.min(LOOKS, TAKES);
        for (int look = 0; look < looks; look++) {
          process.outputWriter().write(TAKES / looks + "\n");
          process.outputWriter().flush();
          counts = process.inputReader().readLine();
          footprints.add(Footprint.of(process, rig.server()));
        }
        process.outputWriter().close();
        assertEquals(0, process.waitFor());
      } finally {
        process.destroyForcibly();
      }
    }
    noted(TAKES + " takes by " + backend, counts, footprints);
    assertFalse(counts.startsWith("0 "), "no take was read: right, refused, failed: " + counts);
  }

  private static Process takes(AlsaRig rig, String backend) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(System.getProperty("java.home") + File.separator + "bin" + File.separator + "java");
    command.addAll(List.of("-XX:+UseSerialGC", "-Xmx96m"));
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.addAll(List.of(ManyTakesProcess.class.getName(), backend, device(backend)));
    command.add(String.valueOf(DELAY));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().putAll(rig.server().environment());
    builder.environment().put("ALSA_CONFIG_PATH", rig.config().toString());
    return builder.redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }

  private static String device(String backend) {
    return Map.of("jack", "rig", "drivers", "JACK: rig", "java-sound", "").get(backend);
  }

  @Test
  @SuppressWarnings("try") // The clients only have to run.
  void aStreamLeavesNothingBehind() throws Exception {
    Footprints footprints = new Footprints(WARM_MINUTES);
    Path out = folder.resolve("out");
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, BLOCK);
        DelayClient rig = DelayClient.start(server, "rig", DelayLine.of(0), DelayLine.of(DELAY));
        ProgrammeClient programme =
            ProgrammeClient.start(server, 5, List.of("rig:in_1", "rig:in_2"))) {
      Process watch = watch(server, out);
      long period = Math.min(LOOK_SECONDS, SECONDS / 3);
      while (!watch.waitFor(period, TimeUnit.SECONDS)) {
        footprints.add(Footprint.of(watch, server));
      }
      assertEquals(0, watch.exitValue(), Files.readString(folder.resolve("err")));
    }
    noted(SECONDS + " s of a stream", windows(out), footprints);
  }

  private Process watch(AudioServer server, Path out) throws IOException {
    Path chain = Files.writeString(folder.resolve("quarry.yaml"), CHAIN);
    String command =
        "watch %s --backend jack --input rig --for %ds --json".formatted(chain, SECONDS);
    ProcessBuilder builder =
        Jar.prepared(Path.of(""), folder.resolve("err"), command.split(" ", -1));
    builder.environment().putAll(server.environment());
    builder.environment().put("LOOPGAUGE_DATA", folder.resolve("data").toString());
    // A heap that what is held too long would fill within the hour.
    builder.environment().put("JDK_JAVA_OPTIONS", "-Xmx128m -XX:+UseSerialGC");
    return builder.redirectOutput(out.toFile()).start();
  }

  /**
   * How many windows had the right delay, none, and lost sound; fails where one was wrong, or was
   * not read though no sound was lost in it.
   */
  private static String windows(Path out) throws IOException {
    int right = 0;
    int unread = 0;
    List<String> lines = Files.readAllLines(out);
    for (String line : lines.subList(0, lines.size() - 1)) {
      Map<String, Object> told = JSON.std.mapFrom(line);
      assertEquals("state", told.get("event"), line);
      if (told.get("delaySamples") instanceof Number delay) {
        assertEquals(DELAY, delay.doubleValue(), STREAM_TOLERANCE, line);
        right++;
      } else {
        assertEquals("interrupted", told.get("state"), line);
        unread++;
      }
    }
    Map<String, Object> summary = JSON.std.mapFrom(lines.get(lines.size() - 1));
    assertEquals(false, summary.get("moved"), summary::toString);
    assertTrue(right > 0, "no window was read");
    return right + " " + unread + " " + summary.get("lostFrames");
  }

  private void noted(String slice, String counts, Footprints footprints) throws IOException {
    if (SLICE) {
      log.add(slice, counts, footprints);
    }
    footprints.assertFlat();
  }
}
