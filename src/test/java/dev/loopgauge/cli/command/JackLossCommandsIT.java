package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.JackBench.CABLE;
import static dev.loopgauge.cli.command.JackBench.RATE;
import static dev.loopgauge.cli.command.JackBench.REFERENCED;
import static dev.loopgauge.cli.command.JackBench.SOAK;
import static dev.loopgauge.cli.command.JackBench.delaySamples;
import static dev.loopgauge.cli.command.JackBench.rig;
import static dev.loopgauge.cli.command.JackBench.soak;
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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The packaged program on a real server that loses sound, to a rig of known delay. */
@NeedsAudioServer
@Timeout(120)
@SuppressWarnings("try")
class JackLossCommandsIT {
  @TempDir Path folder;
  private JackBench bench;

  @BeforeEach
  void open() {
    bench = new JackBench(folder);
  }

  @Test
  void lostSoundIsPlayedAgainOrRefused() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.LOSE, RATE, 1024);
        DelayClient rig = rig(server, CABLE, DelayLine.of(480))) {
      Process measuring = bench.start(server, "measure", REFERENCED, "--repeat", "5");
      Thread.sleep(5_000);
      rig.pause();
      Thread.sleep(300);
      rig.resume();
      Run run = Jar.end(measuring, bench.err());

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
  void aSoakCountsWhatWasLost() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.LOSE, RATE, 1024);
        DelayClient rig = rig(server, CABLE, DelayLine.of(480))) {
      Process soaking = bench.start(server, "soak", REFERENCED, SOAK);
      while (soaking.isAlive() && !Files.readString(bench.err()).contains(" of 0.2 min")) {
        Thread.sleep(50);
      }
      rig.pause();
      Thread.sleep(1_500);
      rig.resume();
      Run spoiled = Jar.end(soaking, bench.err());
      assertEquals(ExitCode.OUTSIDE, spoiled.exitCode(), spoiled.out() + spoiled.err());
      assertTrue(soak(spoiled).get("worst") != null, spoiled.out());
    }
  }
}
