package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.javasound.AlsaRig;
import dev.loopgauge.cli.Jar;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The packaged program, through Java Sound and a real audio server, to a rig of known delay. */
@NeedsAudioServer
@Timeout(120)
class JavaSoundCommandsIT {
  private static final DelayLine CABLE = DelayLine.of(0);

  @TempDir Path folder;

  @ParameterizedTest(name = "{0} samples at a block of {1}")
  @CsvSource({"47, 256", "1031, 512", "3001, 1024"})
  void measuresAKnownDelayInvertedAndTwelveDbDown(int delay, int block) throws Exception {
    try (AlsaRig rig = rig(block, CABLE, DelayLine.of(delay).withGain(-0.25))) {
      Run run = run(rig, measure("--seconds", "0.5", "--repeat", "2"));

      assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
      Map<?, ?> found = (Map<?, ?>) run.json().get("measurement");
      assertEquals(delay, ((Number) found.get("delaySamples")).doubleValue(), 0.05);
      assertEquals(-12.04, ((Number) found.get("levelDb")).doubleValue(), 0.1);
      assertEquals("inverted", found.get("polarity"));
      assertEquals("referenced", found.get("method"));
    }
  }

  /**
   * A converter of the system's configuration takes any rate. At 32 kHz it was wrong by 977 ppm,
   * and with four channels it took the process down in the system's library.
   */
  @Test
  void looksBehindAConverter() throws Exception {
    DelayLine late = DelayLine.of(4800);
    try (AlsaRig rig = rig(1024, CABLE, late, CABLE, CABLE).hidingItsRate()) {
      Run wrong = run(rig, measure("--sample-rate", "32000"));
      assertEquals(ExitCode.AUDIO, wrong.exitCode(), wrong.out() + wrong.err());
      assertTrue(wrong.out().contains("it runs at 48000 Hz"), wrong.out());
      Run right = run(rig, measure("--seconds", "0.5", "--repeat", "2"));
      assertEquals(ExitCode.GOOD, right.exitCode(), right.out() + right.err());
      Map<?, ?> found = (Map<?, ?>) right.json().get("measurement");
      assertEquals(4800, ((Number) found.get("delaySamples")).doubleValue(), 0.05);
      assertEquals(List.of(), right.json().get("findings"));
    }
  }

  @Test
  void listsTheCardAndChecksThePatch() throws Exception {
    try (AlsaRig rig = rig(1024, CABLE, DelayLine.of(480))) {
      Map<?, ?> javaSound =
          (Map<?, ?>) ((List<?>) run(rig, "devices", "--json").json().get("backends")).get(0);
      assertEquals(true, javaSound.get("usable"), javaSound.toString());

      Run check = run(rig, patch());
      assertEquals(ExitCode.GOOD, check.exitCode(), check.out() + check.err());
      assertEquals("patched", check.json().get("outcome"));
    }
  }

  @Test
  void aMutedPathIsNoNumber() throws Exception {
    try (AlsaRig rig = rig(1024, CABLE, DelayLine.of(480).withGain(0))) {
      Run run = run(rig, measure());

      assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out() + run.err());
      assertEquals("not-trustworthy", run.json().get("outcome"));
    }
  }

  @Test
  void aServerThatDiesExitsWithFour() throws Exception {
    try (AlsaRig rig = rig(1024, CABLE, DelayLine.of(480))) {
      Path err = folder.resolve("err");
      Process measuring = Jar.start(environment(rig), err, measure("--repeat", "20"));
      Thread.sleep(4_000);
      rig.server().kill();
      Run run = Jar.end(measuring, err);

      assertEquals(ExitCode.AUDIO, run.exitCode(), run.out() + run.err());
      assertTrue(List.of("gone", "timed-out").contains(run.error("code")), run.out());
    }
  }

  private AlsaRig rig(int block, DelayLine... lines) throws Exception {
    return AlsaRig.start(folder, Cycles.STRETCH, block, lines);
  }

  private Run run(AlsaRig rig, String... args) throws Exception {
    Path err = folder.resolve("err");
    return Jar.end(Jar.start(environment(rig), err, args), err);
  }

  private Map<String, String> environment(AlsaRig rig) {
    Map<String, String> environment = new HashMap<>(rig.server().environment());
    environment.put("ALSA_CONFIG_PATH", rig.config().toString());
    environment.put("LOOPGAUGE_DATA", folder.resolve("data").toString());
    return environment;
  }

  private static String[] measure(String... more) {
    return command("measure", more);
  }

  private static String[] patch() {
    return command("patch");
  }

  private static String[] command(String name, String... more) {
    String[] patched = {
      name,
      "--backend",
      "java-sound",
      "--buffer",
      "8192",
      "--yes",
      "--json",
      "--send",
      "2",
      "--return",
      "2",
      "--reference-send",
      "1",
      "--reference-return",
      "1"
    };
    return Stream.of(patched, more).flatMap(Stream::of).toArray(String[]::new);
  }
}
