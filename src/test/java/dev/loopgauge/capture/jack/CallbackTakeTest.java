package dev.loopgauge.capture.jack;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.Incident;
import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.nio.FloatBuffer;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CallbackTakeTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int BLOCK = 4;

  private final CallbackTake take =
      new CallbackTake(new Take(List.of(Signal.of(RATE, 1.0, 2, 3, 4, 5, 6)), 10, List.of()), 1);

  /** Runs one block of a cable: what is played is recorded in the same block. */
  private void cable(long blockTime) {
    FloatBuffer wire = FloatBuffer.allocate(BLOCK);
    take.play(0, take.frameAt(blockTime, BLOCK), wire, BLOCK);
    take.played().block(take.frameAt(blockTime, BLOCK), BLOCK);
    take.record(0, take.frameAt(blockTime, BLOCK), wire, BLOCK);
    take.recorded().block(take.frameAt(blockTime, BLOCK), BLOCK);
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 1_000, (1L << 31) - 9, (1L << 32) - 12, (1L << 32) - 8})
  void recordsWhatItPlaysAtTheSameFrameWhereverTheServersClockStands(long time) {
    for (int block = 0; block < 5; block++) {
      assertFalse(take.isComplete(), "after " + block + " blocks");
      cable((time + (long) block * BLOCK) & 0xFFFF_FFFFL);
    }
    assertTrue(take.isComplete());
    assertArrayEquals(new float[] {1, 2, 3, 4, 5, 6, 0, 0, 0, 0}, take.returns()[0]);
    assertEquals(List.of(), take.incidents());
  }

  @Test
  void tellsOfABlockLeftOut() {
    for (long time : new long[] {0, 4, 8, 16}) {
      cable(time);
    }
    assertTrue(take.isComplete());
    assertEquals(
        List.of(
            new Incident(Incident.Kind.DROPOUT, 4, 4, "4 frames were left out or played twice."),
            new Incident(Incident.Kind.DROPOUT, 4, 4, "4 frames were left out or recorded twice.")),
        take.incidents());
  }

  @Test
  void datesEachLoss() {
    CallbackTake longer = new CallbackTake(new Take(List.of(), 40, List.of()), 1);
    for (long time : new long[] {0, 12, 16, 32}) {
      longer.recorded().block(longer.frameAt(time, BLOCK), BLOCK);
    }
    assertEquals(
        List.of("0 for 4", "12 for 12"),
        longer.incidents().stream().map(i -> i.frame() + " for " + i.frames()).toList());
  }

  @Test
  void tellsOfABlockThatCameTwice() {
    for (long time : new long[] {0, 4, 8, 8, 12, 16}) {
      cable(time);
    }
    assertEquals(0, take.incidents().get(0).frame());
    assertEquals(2, take.incidents().size());
  }

  @Test
  void tellsOfLostTimeAndOfAnotherBlockSize() {
    cable(0);
    cable(4);
    cable(8);
    take.xrun();
    take.xrun();
    take.blockSizeChanged(4, 8);
    assertEquals(
        List.of(
            new Incident(
                Incident.Kind.BLOCK_SIZE_CHANGED,
                4,
                "The audio server's block size changed from 4 to 8 samples."),
            new Incident(Incident.Kind.DROPOUT, 4, "The audio server lost time (xrun)."),
            new Incident(Incident.Kind.DROPOUT, 4, "The audio server lost time (xrun).")),
        take.incidents());
  }
}
