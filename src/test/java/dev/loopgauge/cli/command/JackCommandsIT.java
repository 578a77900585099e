package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
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
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The packaged program, through JACK on a real server, to a rig of known delay. */
@NeedsAudioServer
@Timeout(120)
@SuppressWarnings("try")
class JackCommandsIT {
  private static final int RATE = 48_000;
  private static final DelayLine CABLE = DelayLine.of(0);
  private static final String[] RIG = {
    "--backend", "jack", "--output", "rig", "--input", "rig", "--yes", "--json"
  };
  private static final String[] REFERENCED = {
    "--send", "2", "--return", "2", "--reference-send", "1", "--reference-return", "1"
  };
  private static final String[] SINGLE = {"--send", "1", "--return", "1"};

  @TempDir Path folder;

  @ParameterizedTest(name = "{0} samples at a block of {1}")
  @CsvSource({"1, 1024", "240, 512", "2881, 2048"})
  void measuresAKnownDelayInvertedAndTwelveDbDown(int delay, int block) throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, block);
        DelayClient rig = rig(server, CABLE, DelayLine.of(delay).withGain(-0.25))) {
      Run run = cleanly(server, "measure", REFERENCED);

      assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
      assertEquals(delay, delaySamples(run), 0.05);
      assertEquals("inverted", measurement(run).get("polarity"));
      assertEquals("referenced", measurement(run).get("method"));
    }
  }

  @Test
  void aKeptCalibrationTakesTheCardOut() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, 1024)) {
      try (DelayClient cable = rig(server, DelayLine.of(777))) {
        Run kept = cleanly(server, "calibrate", SINGLE);
        assertEquals(ExitCode.GOOD, kept.exitCode(), kept.out() + kept.err());
      }
      try (DelayClient rig = rig(server, DelayLine.of(777 + 595))) {
        Run run = cleanly(server, "measure", SINGLE);
        assertEquals(595, delaySamples(run), 0.05);
        assertEquals("sample-locked", measurement(run).get("method"));
        rig.changeBlockSize(2048);
        Run other = cleanly(server, "measure", SINGLE);
        assertEquals("uncalibrated", measurement(other).get("method"));
        assertTrue(other.out().contains("made at a block of 1024 samples, not 2048"), other.out());
      }
    }
  }

  @Test
  void aKeptSkewTakesOutWhatTwoPairsOfChannelsDifferBy() throws Exception {
    String[] quick = {"--seconds", "0.5", "--repeat", "1", "--max-delay", "0.1"};
    String[] channels = Stream.of(REFERENCED, quick).flatMap(Stream::of).toArray(String[]::new);
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, 1024)) {
      try (DelayClient cables = rig(server, CABLE, DelayLine.of(7))) {
        Run kept = cleanly(server, "calibrate", channels);
        assertEquals(ExitCode.GOOD, kept.exitCode(), kept.out() + kept.err());
      }
      try (DelayClient rig = rig(server, CABLE, DelayLine.of(7 + 595))) {
        Run run = cleanly(server, "measure", channels);
        assertEquals(595, delaySamples(run), 0.05);
        assertTrue(run.out().contains("is taken off: +7.00"), run.out());
        Run patched = cleanly(server, "calibrate", channels);
        assertEquals(ExitCode.NOT_TRUSTWORTHY, patched.exitCode(), patched.out());
      }
    }
  }

  @Test
  void checksThePatch() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, 1024);
        DelayClient rig = rig(server, CABLE, DelayLine.of(480))) {
      Run run = run(server, "patch", REFERENCED);

      assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
      assertEquals("patched", run.json().get("outcome"));
    }
  }

  @Test
  void lostSoundIsPlayedAgainOrRefused() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.LOSE, RATE, 1024);
        DelayClient rig = rig(server, CABLE, DelayLine.of(480))) {
      Path err = folder.resolve("err");
      Process measuring = start(server, err, "measure", REFERENCED, "--repeat", "5");
      Thread.sleep(5_000);
      rig.pause();
      Thread.sleep(300);
      rig.resume();
      Run run = Jar.end(measuring, err);

      if (run.exitCode() == ExitCode.GOOD) {
        assertEquals(480, delaySamples(run), 0.05);
        assertTrue(run.err().contains("Sound was lost in "), run.err());
        assertTrue(run.out().contains("played again: "), run.out());
      } else if (run.exitCode() == ExitCode.NOT_TRUSTWORTHY) {
        assertNull(run.json().get("measurement"), run.out());
        assertTrue(run.out().contains("\"dropout\""), run.out());
      } else {
        assertEquals(ExitCode.AUDIO, run.exitCode(), run.out() + run.err());
      }
    }
  }

  @Test
  void aSoakCountsWhatHappensAndNothingElse() throws Exception {
    String[] soak = {"--for", "12s", "--seconds", "0.5", "--repeat", "1", "--max-delay", "0.1"};
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, 1024);
        DelayClient rig = rig(server, CABLE, DelayLine.of(480))) {
      Run run = run(server, "soak", REFERENCED, soak);
      for (int again = 0; again < 3 && run.exitCode() != ExitCode.GOOD; again++) {
        run = run(server, "soak", REFERENCED, soak);
      }
      Object standing = ((Map<?, ?>) run.json().get("verdict")).get("standing");
      assertEquals("good", standing, run.out() + run.err());
      assertEquals(480, ((Number) soak(run).get("delaySamples")).doubleValue(), 0.05);
    }
    try (AudioServer server = AudioServer.start(Cycles.LOSE, RATE, 1024);
        DelayClient rig = rig(server, CABLE, DelayLine.of(480))) {
      Path err = folder.resolve("err");
      Process soaking = start(server, err, "soak", REFERENCED, soak);
      while (soaking.isAlive() && !Files.readString(err).contains(" of 0.2 min")) {
        Thread.sleep(50);
      }
      rig.pause();
      Thread.sleep(1_500);
      rig.resume();
      Run spoiled = Jar.end(soaking, err);
      assertEquals(ExitCode.OUTSIDE, spoiled.exitCode(), spoiled.out() + spoiled.err());
      assertTrue(soak(spoiled).get("worst") != null, spoiled.out());
    }
  }

  private static Map<?, ?> soak(Run run) {
    return (Map<?, ?>) run.json().get("soak");
  }

  @Test
  void aServerThatDiesExitsWithFour() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, 1024);
        DelayClient rig = rig(server, CABLE, DelayLine.of(480))) {
      Path err = folder.resolve("err");
      Process measuring = start(server, err, "measure", REFERENCED, "--repeat", "20");
      Thread.sleep(4_000);
      server.kill();
      Run run = Jar.end(measuring, err);

      assertEquals(ExitCode.AUDIO, run.exitCode(), run.out() + run.err());
    }
  }

  @Test
  void withoutAServerItSaysSo() throws Exception {
    Path err = folder.resolve("err");
    Map<String, String> nobody =
        Map.of("JACK_DEFAULT_SERVER", "nobody", "JACK_NO_START_SERVER", "1");
    String[] args =
        Stream.of(new String[] {"measure"}, RIG, SINGLE).flatMap(Stream::of).toArray(String[]::new);
    Run run = Jar.end(Jar.start(nobody, err, args), err);

    assertEquals(ExitCode.AUDIO, run.exitCode(), run.out());
    assertEquals("backend-unusable", run.error("code"));
  }

  private static DelayClient rig(AudioServer server, DelayLine... lines) throws Exception {
    return DelayClient.start(server, "rig", lines);
  }

  /** A busy machine loses sound now and then: does what the hint says and measures again. */
  private Run cleanly(AudioServer server, String command, String[] channels) throws Exception {
    Run run = run(server, command, channels);
    for (int again = 0; again < 4 && run.out().contains("\"dropout\""); again++) {
      run = run(server, command, channels);
    }
    return run;
  }

  private Run run(AudioServer server, String command, String[] channels, String... more)
      throws Exception {
    Path err = folder.resolve("err");
    return Jar.end(start(server, err, command, channels, more), err);
  }

  private Process start(
      AudioServer server, Path err, String command, String[] channels, String... more)
      throws Exception {
    Map<String, String> environment = new HashMap<>(server.environment());
    environment.put("LOOPGAUGE_DATA", folder.resolve("data").toString());
    return Jar.start(
        environment,
        err,
        Stream.of(new String[] {command}, RIG, channels, more)
            .flatMap(Stream::of)
            .toArray(String[]::new));
  }

  private static Map<?, ?> measurement(Run run) {
    Map<?, ?> measurement = (Map<?, ?>) run.json().get("measurement");
    assertTrue(measurement != null, run.out() + run.err());
    return measurement;
  }

  private static double delaySamples(Run run) {
    return ((Number) measurement(run).get("delaySamples")).doubleValue();
  }
}
