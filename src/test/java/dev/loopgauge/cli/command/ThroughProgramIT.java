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
import dev.loopgauge.outside.NeedsTool;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The packaged program and a host on a real server that says the truth about itself, or not. */
@NeedsAudioServer
@Timeout(120)
@SuppressWarnings("try")
class ThroughProgramIT {
  private static final String LIMITER = "/usr/lib/ladspa/fast_lookahead_limiter_1913.so";

  @TempDir Path folder;

  @Test
  void tellsTrueStatementsFromFalseOnes() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 1024);
        DelayClient host =
            DelayClient.start(
                server,
                "host",
                DelayLine.of(304).stating(304),
                DelayLine.of(240).stating(0),
                DelayLine.of(0).stating(0))) {
      told(server, 1, true, 304, 304, "they agree");
      told(server, 2, false, 0, 240, "can't compensate what it isn't told");
      told(server, 3, true, 0, 0, "0 samples in, 0 out");
    }
  }

  /** The look-ahead limiter of Debian's swh-plugins states its latency on a port of its own. */
  @Test
  @NeedsTool(LIMITER)
  void findsTheDelayOfALookAheadLimiterAndAHostThatHidesIt() throws Exception {
    DelayLine limiter = DelayLine.limiting(LIMITER);
    int stated = limiter.limiterStates(48_000);
    assertTrue(stated > 100, "the limiter states " + stated);
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 1024);
        DelayClient host =
            DelayClient.start(server, "host", limiter.stating(stated), limiter.stating(0))) {
      told(server, 1, true, stated, stated, "they agree");
      told(server, 2, false, 0, stated, "can't compensate what it isn't told");
    }
  }

  private void told(
      AudioServer server, int channel, boolean agrees, int reported, int measured, String words)
      throws Exception {
    Run run = measure(server, channel);
    for (int again = 0; again < 4 && run.out().contains("\"dropout\""); again++) {
      run = measure(server, channel);
    }
    String said = run.out() + run.err();
    assertEquals(agrees ? ExitCode.GOOD : ExitCode.OUTSIDE, run.exitCode(), said);
    Map<?, ?> check = (Map<?, ?>) run.json().get("hostCheck");
    assertEquals(agrees, check.get("agrees"), said);
    assertEquals(reported, number(check, "reportedSamples"), said);
    assertEquals(measured, number(check, "measuredSamples"), 0.05, said);
    assertTrue(check.get("text").toString().contains(words), said);
  }

  private static double number(Map<?, ?> check, String key) {
    return ((Number) check.get(key)).doubleValue();
  }

  private Run measure(AudioServer server, int channel) throws Exception {
    Path err = folder.resolve("err");
    String[] args = {
      "host",
      "--backend=jack",
      "--through=host",
      "--send=" + channel,
      "--return=" + channel,
      "--seconds=0.3",
      "--repeat=2",
      "--yes",
      "--json"
    };
    return Jar.end(Jar.start(server.environment(), err, args), err);
  }
}
