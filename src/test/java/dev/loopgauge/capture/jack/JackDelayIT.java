package dev.loopgauge.capture.jack;

import static java.util.concurrent.CompletableFuture.delayedExecutor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.PortLatency;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@NeedsAudioServer
class JackDelayIT {
  private static final int[] DELAYS = {1, 63, 240, 1024, 2881};
  private static final double INVERTED_12_DB_DOWN = -0.25;

  @ParameterizedTest
  @ValueSource(ints = {64, 256, 1024})
  void recoversWholeSampleDelaysAgainstAReferenceTwentyTimesInARow(int blockSize) throws Exception {
    try (Bench bench = Bench.start(Cycles.STRETCH, blockSize, lines());
        JackSession session = bench.open(1 + DELAYS.length)) {
      assertEquals(blockSize, session.info().bufferSamples());
      for (int run = 0; run < 20; run++) {
        Capture capture = Bench.cleanCapture(session, Bench.clicks(1 + DELAYS.length, 0.1));
        Signal reference = capture.returns().get(0);
        for (int i = 0; i < DELAYS.length; i++) {
          var found = DirectCorrelation.of(reference, capture.returns().get(1 + i));
          String where = "run " + run + ", block " + blockSize;
          assertEquals(DELAYS[i], found.lag(), where);
          assertEquals(INVERTED_12_DB_DOWN, found.gain(), 1e-6, where);
        }
      }
    }
  }

  private static DelayLine[] lines() {
    DelayLine[] lines = new DelayLine[1 + DELAYS.length];
    lines[0] = DelayLine.of(0);
    for (int i = 0; i < DELAYS.length; i++) {
      lines[1 + i] = DelayLine.of(DELAYS[i]).withGain(INVERTED_12_DB_DOWN);
    }
    return lines;
  }

  @Test
  void aRigIsLateByItsOwnDelayAloneAtEachOpening() throws Exception {
    Signal click = Bench.clicks(1, 0.1).sends().get(0);
    try (Bench bench = Bench.start(Cycles.STRETCH, 128, DelayLine.of(240))) {
      for (int opening = 0; opening < 5; opening++) {
        try (JackSession session = bench.open(1)) {
          Signal heard = Bench.cleanCapture(session, Bench.clicks(1, 0.1)).returns().get(0);
          assertEquals(240, DirectCorrelation.of(click, heard).lag(), "opening " + opening);
          assertTrue(session.info().sampleLocked());
        }
      }
    }
  }

  @Test
  void aTakeThatLooksCleanIsRightHoweverTheRigStumbles() throws Exception {
    try (Bench bench = Bench.start(Cycles.LOSE, 256, DelayLine.of(0), DelayLine.of(240));
        JackSession session = bench.open(2)) {
      int spoiled = 0;
      for (int run = 0; run < 20; run++) {
        CompletableFuture<Void> stumbled = stumble(bench.rig(), 3 * run, 2 * run);
        Capture capture = session.capture(Bench.clicks(2, 0.1));
        stumbled.get(10, TimeUnit.SECONDS);
        if (capture.incidents().isEmpty()) {
          List<Signal> returns = capture.returns();
          int lag = DirectCorrelation.of(returns.get(0), returns.get(1)).lag();
          assertEquals(240, lag, "run " + run);
        } else {
          spoiled++;
        }
      }
      assertTrue(spoiled > 0, "the rig never stumbled");
    }
  }

  /** Stops the rig after a while for a while, both in ms. */
  private static CompletableFuture<Void> stumble(DelayClient rig, int after, int length) {
    return CompletableFuture.runAsync(rig::pause, delayedExecutor(after, TimeUnit.MILLISECONDS))
        .thenRunAsync(rig::resume, delayedExecutor(length, TimeUnit.MILLISECONDS));
  }

  @Test
  void readsTheLatencyThatARigStatesTrueOrNot() throws Exception {
    DelayLine honest = DelayLine.of(304).stating(304);
    DelayLine wrong = DelayLine.of(304).stating(64);
    try (Bench bench = Bench.start(Cycles.STRETCH, 1024, honest, wrong);
        JackSession session = bench.open(2)) {
      session.capture(Bench.clicks(2, 0.1));
      List<PortLatency> stated = List.of(new PortLatency(304, 304), new PortLatency(64, 64));
      List<PortLatency> read = List.of();
      // The server tells the graph of a new patch a moment later, at its leisure.
      for (int again = 0; again < 100 && !stated.equals(read); again++) {
        Thread.sleep(50);
        read = List.of(session.sendLatency(0), session.sendLatency(1));
      }
      assertEquals(stated, read);
      assertEquals(stated, List.of(session.returnLatency(0), session.returnLatency(1)));
    }
  }
}
