package dev.loopgauge.job.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.audioserver.ProgrammeClient;
import dev.loopgauge.job.Ending;
import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/**
 * What goes wrong on a real server while it is watched: a host dies and comes back with another
 * block size, the server stands still, the server dies. All by {@code -Dloopgauge.full=true}.
 */
@NeedsAudioServer
@Timeout(240)
@SuppressWarnings("try") // The clients only have to run.
class JackWatchFaultsIT {
  private static final String CHAIN =
      """
      chain: Quarry Stage
      sample-rate: 48000
      block-size: 64
      reference: { send: 1, return: 1 }
      hosts: { box: { block-size: 64 } }
      stages:
        host:  { blocks: 2, host: box }
        fixed: { samples: 100 }
      paths:
        hosted: { listener: house, stages: [host, fixed], patch: { send: 2, return: 2 } }
        other:  { listener: stream, stages: [fixed], patch: { send: 3, return: 3 } }
      """;
  private static final List<String> INPUTS = List.of("rig:in_1", "rig:in_3", "host:in_1");

  /** From what happened to the time that is told of it: sound takes that long through the rig. */
  private static final Duration SOON = Duration.ofSeconds(2);

  @TempDir Path folder;
  private Path chain;

  @BeforeEach
  void writeChain() throws Exception {
    chain = Files.writeString(folder.resolve("quarry.yaml"), CHAIN);
  }

  private static DelayClient rig(AudioServer server) throws Exception {
    return DelayClient.start(server, "rig", DelayLine.of(0), DelayLine.of(100), DelayLine.of(100));
  }

  private static DelayClient host(AudioServer server, int blockSize) throws Exception {
    DelayClient host = DelayClient.start(server, "host", DelayLine.of(2 * blockSize));
    server.patch("host:out_1", "rig:in_2");
    return host;
  }

  private static void assertAt(OffsetDateTime happened, String told) {
    assertAt(happened, SOON, told);
  }

  private static void assertAt(OffsetDateTime happened, Duration within, String told) {
    Duration away = Duration.between(happened, OffsetDateTime.parse(told)).abs();
    assertTrue(away.compareTo(within) < 0, happened + " told as " + told);
  }

  @Test
  void tellsAHostThatDiedAndCameBackWithAnotherBlockSize() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 1024);
        DelayClient rig = rig(server)) {
      DelayClient host = host(server, 64);
      try (ProgrammeClient programme = ProgrammeClient.start(server, 5, INPUTS);
          HeardWatch watch = HeardWatch.of(chain)) {
        watch.await(12);
        OffsetDateTime died = OffsetDateTime.now(ZoneId.systemDefault());
        host.kill();
        WatchLine lost = watch.event("a host that died");
        assertEquals(WatchLine.Event.LOST_SOUND, lost.event());
        assertEquals(Optional.of(Phase.STARTS), lost.phase());
        assertAt(died, lost.at());
        watch.await(3);
        host = host(server, 256);
        OffsetDateTime back = OffsetDateTime.now(ZoneId.systemDefault());
        server.patch("programme:out_1", "host:in_1");
        WatchLine ends = watch.event("a host that is back");
        assertEquals(WatchLine.Event.LOST_SOUND, ends.event());
        assertEquals(Optional.of(Phase.ENDS), ends.phase());
        assertAt(back, ends.at());
        WatchLine step = watch.event("another block size");
        assertEquals(WatchLine.Event.STEP, step.event());
        double within = step.what().step().orElseThrow().withinSeconds().doubleValue();
        assertAt(back, SOON.plusMillis((long) (1000 * within)), step.at());
        assertEquals(384, step.what().step().orElseThrow().changeSamples().doubleValue(), 0.05);
        assertEquals("block-size", step.what().causes().get(0).cause());
        for (WatchLine event : List.of(lost, ends, step)) {
          assertEquals(Optional.of("hosted"), event.path());
        }
        watch.await(4);
        assertEquals(Ending.OUTSIDE, watch.end().ending());
        assertEquals(List.of(), List.copyOf(watch.events));
      } finally {
        host.close();
      }
    }
  }

  @Test
  @EnabledIfSystemProperty(named = "loopgauge.full", matches = "true")
  void tellsAServerThatStoodStill() throws Exception {
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 1024);
        DelayClient rig = rig(server);
        DelayClient host = host(server, 64);
        ProgrammeClient programme = ProgrammeClient.start(server, 5, INPUTS);
        HeardWatch watch = HeardWatch.of(chain)) {
      watch.await(8);
      server.pause();
      try {
        watch.note("NO SOUND");
        assertNothingIsRead(watch.await(2));
      } finally {
        Thread.sleep(2000);
        server.resume();
      }
      watch.note("The sound is back");
      watch.await(10);
      assertReadAgain(watch);
    }
  }

  @Test
  @EnabledIfSystemProperty(named = "loopgauge.full", matches = "true")
  void goesOnOnAServerThatIsStartedAnew() throws Exception {
    AudioServer first = AudioServer.start(Cycles.STRETCH, 48_000, 1024);
    DelayClient firstRig = rig(first);
    DelayClient firstHost = host(first, 64);
    ProgrammeClient firstProgramme = ProgrammeClient.start(first, 5, INPUTS);
    try (HeardWatch watch = HeardWatch.of(chain)) {
      watch.await(8);
      first.kill();
      watch.note("NO SOUND");
      assertNothingIsRead(watch.await(3));
      try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 1024);
          DelayClient rig = rig(server);
          DelayClient host = host(server, 64);
          ProgrammeClient programme = ProgrammeClient.start(server, 5, INPUTS)) {
        watch.note("The sound is back");
        watch.await(10);
        assertReadAgain(watch);
      }
    } finally {
      firstProgramme.close();
      firstHost.close();
      firstRig.close();
      first.close();
    }
  }

  /** What was read before is not told as if it were read now. */
  private static void assertNothingIsRead(List<WatchLine> states) {
    for (WatchLine state : states) {
      assertTrue(state.read().shown().isEmpty(), state::toString);
      assertTrue(state.ageSeconds().orElseThrow().doubleValue() > 1, state::toString);
    }
  }

  /** Both paths are read as before, and nothing is told of them. */
  private static void assertReadAgain(HeardWatch watch) throws Exception {
    List<WatchLine> states = watch.await(1);
    assertEquals(228, states.get(0).read().shown().orElseThrow().samples(), 0.05);
    assertEquals(100, states.get(1).read().shown().orElseThrow().samples(), 0.05);
    assertEquals(Ending.GOOD, watch.end().ending());
    assertEquals(List.of(), List.copyOf(watch.events));
  }
}
