package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.javasound.AlsaRig;
import dev.loopgauge.cli.Jar;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The packaged program, through its drivers and a real audio server, to a rig of known delay. */
@NeedsAudioServer
@Timeout(180)
class DriversCommandsIT {
  private static final int DELAY = 480;
  private static final String[] CHANNELS = {
    "--send", "2", "--return", "2", "--reference-send", "1", "--reference-return", "1"
  };
  private static final String[] QUICK = {
    "--seconds", "0.5", "--repeat", "2", "--max-delay", "0.2", "--yes", "--json"
  };

  /** What ALSA tells of: devices with a hint. */
  private static final String CARDS =
      """
      pcm.stage {
        type asym
        playback.pcm { type plug slave.pcm "sends" }
        capture.pcm { type plug slave.pcm "returns" }
        hint { show on description "Stage card" }
      }
      pcm.broken { type hw card 7 hint { show on description "None" } }
      """;

  @TempDir Path folder;

  @Test
  void measuresThroughJackAndLeavesNoNativeCodeBehind() throws Exception {
    Path unpacked = Files.createDirectory(folder.resolve("unpacked"));
    try (AlsaRig rig = rig()) {
      Map<String, String> there = Map.of("JAVA_TOOL_OPTIONS", "-Djna.tmpdir=" + unpacked);
      assertKnown(cleanly(rig, there, "JACK: rig"));
    }
    try (Stream<Path> left = Files.list(unpacked)) {
      assertEquals(List.of(), left.toList());
    }
  }

  /** Two devices of ALSA are joined, so what is known is the difference of two returns. */
  @Test
  void measuresThroughAlsaAgainstAReference() throws Exception {
    try (AlsaRig rig = rig()) {
      Files.writeString(rig.config(), Files.readString(rig.config()) + CARDS);
      Map<String, String> there = Map.of("ALSA_CONFIG_PATH", rig.config().toString());
      Run listed = run(rig, there, "devices");
      assertTrue(listed.out().contains("ALSA: stage "), listed.out());
      assertFalse(listed.out().contains("ALSA: broken"), "a device that doesn't open is listed");
      assertTrue(listed.out().matches("(?s).*JACK: rig +2 +2  48000 +yes\n.*"), listed.out());
      assertTrue(listed.out().matches("(?s).*ALSA: stage .* 48000 +no\n.*"), listed.out());
      assertKnown(cleanly(rig, there, "ALSA: stage"));

      // The driver would take a larger one in its place, and say nothing.
      Run small = measure(rig, there, "ALSA: stage", "--buffer", "256");
      assertEquals(ExitCode.AUDIO, small.exitCode(), small.out());
      assertTrue(small.out().contains("takes a buffer of "), small.out());

      // Its layer takes any rate; at this one it read 3196.875 of 3,200 samples as right.
      Run converted = measure(rig, there, "ALSA: stage", "--sample-rate", "32000");
      assertEquals(ExitCode.AUDIO, converted.exitCode(), converted.out());
      assertTrue(converted.out().contains("it runs at 48000 Hz"), converted.out());

      Run broken = measure(rig, there, "ALSA: broken");
      assertEquals(ExitCode.AUDIO, broken.exitCode(), broken.out());
      assertTrue(broken.out().contains("doesn't open: "), broken.out());
    }
  }

  @Test
  void aLibraryThatDoesNotLoadLeavesAllElseWorking() throws Exception {
    Files.writeString(folder.resolve("libpulse.so.0"), "no library");
    Map<String, String> there = Map.of("LD_LIBRARY_PATH", folder.toString());
    try (AlsaRig rig = rig()) {
      Run listed = run(rig, there, "devices");
      assertEquals(ExitCode.GOOD, listed.exitCode(), listed.err());
      assertTrue(
          listed.out().contains("drivers can't be used: The drivers need libpulse.so.0, which"),
          listed.out());
      assertTrue(listed.out().contains("--backend jack --output \"system\""), listed.out());

      Run measured = measure(rig, there, "JACK: rig");
      assertEquals(ExitCode.AUDIO, measured.exitCode(), measured.out());
      assertEquals("backend-unusable", measured.error("code"));
    }
  }

  @Test
  void otherBackEndsLoadNothingOfIt() throws Exception {
    try (AlsaRig rig = rig()) {
      Map<String, String> there = Map.of("JAVA_TOOL_OPTIONS", "-Xlog:class+load");
      Path err = folder.resolve("err");
      Map<String, String> environment = new HashMap<>(rig.server().environment());
      environment.putAll(there);
      String[] args = {"measure", "--backend", "jack", "--send", "9", "--return", "9", "--yes"};
      Run run = Jar.end(Jar.start(folder, environment, err, args), err);
      assertTrue(run.out().contains("org.jaudiolibs."), "nothing was logged");
      assertFalse(run.out().contains(" xt.audio."), "native code of the drivers is at hand");
    }
  }

  @Test
  void theJarHoldsNoLibraryForWindows() throws Exception {
    try (ZipFile jar = new ZipFile(System.getProperty("loopgauge.jar"))) {
      assertTrue(jar.getEntry("linux-x86-64/libxt-audio.so") != null);
      assertEquals(
          List.of(),
          jar.stream()
              .map(Object::toString)
              .filter(name -> name.contains("xt-audio.dll"))
              .toList());
      try (InputStream terms = jar.getInputStream(jar.getEntry("META-INF/THIRD-PARTY.txt"))) {
        assertTrue(new String(terms.readAllBytes(), StandardCharsets.UTF_8).contains("XT-Audio"));
      }
    }
  }

  private AlsaRig rig() throws IOException {
    DelayLine path = DelayLine.of(DELAY).withGain(-0.25);
    return AlsaRig.start(folder, Cycles.STRETCH, 1024, DelayLine.of(0), path);
  }

  private static void assertKnown(Run run) {
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    Map<?, ?> found = (Map<?, ?>) run.json().get("measurement");
    assertEquals(DELAY, ((Number) found.get("delaySamples")).doubleValue(), 0.05);
    assertEquals("inverted", found.get("polarity"));
    assertEquals("referenced", found.get("method"));
  }

  /** A busy machine loses sound now and then: does what the hint says and measures again. */
  private Run cleanly(AlsaRig rig, Map<String, String> there, String device) throws Exception {
    Run run = measure(rig, there, device);
    for (int again = 0; again < 4 && lostSound(run); again++) {
      run = measure(rig, there, device);
    }
    return run;
  }

  private static boolean lostSound(Run run) {
    return run.out().contains("\"dropout\"") || run.out().contains("\"short\"");
  }

  private Run measure(AlsaRig rig, Map<String, String> there, String device, String... more)
      throws Exception {
    String[] backend = {"measure", "--backend", "drivers", "--output", device};
    String[] args =
        Stream.of(backend, CHANNELS, QUICK, more).flatMap(Stream::of).toArray(String[]::new);
    return run(rig, there, args);
  }

  private Run run(AlsaRig rig, Map<String, String> there, String... args) throws Exception {
    Path err = folder.resolve("err");
    Map<String, String> environment = new HashMap<>(rig.server().environment());
    environment.putAll(there);
    return Jar.end(Jar.start(folder, environment, err, args), err);
  }
}
