package dev.loopgauge.capture.jack;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.LostFrames;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CallbackStreamTest {
  private static final int BLOCK = 64;
  private static final ServerPort[] NO_PORTS = {};

  private final CallbackStream stream = new CallbackStream(0, BLOCK, 48_000);
  private final List<String> told = new ArrayList<>();
  private final BlockListener listener =
      new BlockListener() {
        @Override
        public boolean block(long frame, float[][] returns, int length) {
          told.add("" + frame);
          return true;
        }

        @Override
        public void lost(LostFrames lost) {
          told.add(lost.frame() + " lost " + lost.frames());
        }
      };

  private void block(long time) {
    stream.record(time & 0xFFFF_FFFFL, BLOCK, NO_PORTS, BLOCK);
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 1_000, (1L << 31) - 80, (1L << 32) - 128})
  void numbersFramesFromZeroWhereverTheServersClockStands(long start) {
    for (int i = 0; i < 4; i++) {
      block(start + (long) i * BLOCK);
    }
    stream.empty(listener);
    assertEquals(List.of("0", "64", "128", "192"), told);
  }

  @Test
  void countsTheFramesThatTheServerLeftOut() {
    block(500);
    block(500 + 5 * BLOCK);
    stream.xrun();
    stream.empty(listener);
    assertEquals(List.of("0", "64 lost 256", "320"), told);
  }

  @Test
  void datesLostTimeThatShowsInNoFrame() {
    block(500);
    stream.xrun();
    stream.empty(listener);
    block(564);
    stream.empty(listener);
    assertEquals(List.of("0", "64 lost 0", "64"), told);
  }
}
