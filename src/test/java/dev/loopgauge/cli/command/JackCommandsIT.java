package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.JackBench.CABLE;
import static dev.loopgauge.cli.command.JackBench.RATE;
import static dev.loopgauge.cli.command.JackBench.REFERENCED;
import static dev.loopgauge.cli.command.JackBench.RIG;
import static dev.loopgauge.cli.command.JackBench.SINGLE;
import static dev.loopgauge.cli.command.JackBench.SOAK;
import static dev.loopgauge.cli.command.JackBench.delaySamples;
import static dev.loopgauge.cli.command.JackBench.measurement;
import static dev.loopgauge.cli.command.JackBench.rig;
import static dev.loopgauge.cli.command.JackBench.soak;
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
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
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
  @TempDir Path folder;
  private JackBench bench;

  @BeforeEach
  void open() {
    bench = new JackBench(folder);
  }

  @ParameterizedTest(name = "{0} samples at a block of {1}")
  @CsvSource({"1, 1024", "240, 512", "2881, 2048"})
  void measuresAKnownDelayInvertedAndTwelveDbDown(int delay, int block) throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, block);
        DelayClient rig = rig(server, CABLE, DelayLine.of(delay).withGain(-0.25))) {
      Run run = bench.cleanly(server, "measure", REFERENCED);

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
        Run kept = bench.cleanly(server, "calibrate", SINGLE);
        assertEquals(ExitCode.GOOD, kept.exitCode(), kept.out() + kept.err());
      }
      try (DelayClient rig = rig(server, DelayLine.of(777 + 595))) {
        Run run = bench.cleanly(server, "measure", SINGLE);
        assertEquals(595, delaySamples(run), 0.05);
        assertEquals("sample-locked", measurement(run).get("method"));
        rig.changeBlockSize(2048);
        Run other = bench.cleanly(server, "measure", SINGLE);
        assertEquals("uncalibrated", measurement(other).get("method"));
        assertTrue(other.out().contains("made at a block of 1024 samples, not 2048"), other.out());
      }
    }
  }

  @Test
  void aKeptSkewTakesOutWhatTwoPairsOfChannelsDifferBy() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, 1024)) {
      try (DelayClient cables = rig(server, CABLE, DelayLine.of(7))) {
        Run kept = bench.cleanly(server, "calibrate", REFERENCED);
        assertEquals(ExitCode.GOOD, kept.exitCode(), kept.out() + kept.err());
      }
      try (DelayClient rig = rig(server, CABLE, DelayLine.of(7 + 595))) {
        Run run = bench.cleanly(server, "measure", REFERENCED);
        assertEquals(595, delaySamples(run), 0.05);
        assertTrue(run.out().contains("is taken off: +7.00"), run.out());
        Run patched = bench.cleanly(server, "calibrate", REFERENCED);
        assertEquals(ExitCode.NOT_TRUSTWORTHY, patched.exitCode(), patched.out());
      }
    }
  }

  @Test
  void checksThePatch() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, 1024);
        DelayClient rig = rig(server, CABLE, DelayLine.of(480))) {
      Run run = bench.run(server, "patch", REFERENCED);

      assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
      assertEquals("patched", run.json().get("outcome"));
    }
  }

  @Test
  void aSoakOfACleanRigIsGood() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, 1024);
        DelayClient rig = rig(server, CABLE, DelayLine.of(480))) {
      Run run = bench.run(server, "soak", REFERENCED, SOAK);
      for (int again = 0; again < 3 && run.exitCode() != ExitCode.GOOD; again++) {
        run = bench.run(server, "soak", REFERENCED, SOAK);
      }
      Object standing = ((Map<?, ?>) run.json().get("verdict")).get("standing");
      assertEquals("good", standing, run.out() + run.err());
      assertEquals(480, ((Number) soak(run).get("delaySamples")).doubleValue(), 0.05);
    }
  }

  @Test
  void aServerThatDiesExitsWithFour() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, RATE, 1024);
        DelayClient rig = rig(server, CABLE, DelayLine.of(480))) {
      Process measuring = bench.start(server, "measure", REFERENCED, "--repeat", "20");
      Thread.sleep(4_000);
      server.kill();
      Run run = Jar.end(measuring, bench.err());

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
}
