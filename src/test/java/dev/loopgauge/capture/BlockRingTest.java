package dev.loopgauge.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class BlockRingTest {
  private final BlockRing ring = new BlockRing(1, 4, 3);
  private final List<String> told = new ArrayList<>();
  private int wanted = Integer.MAX_VALUE;

  private final BlockListener listener =
      new BlockListener() {
        @Override
        public boolean block(long frame, float[][] returns, int length) {
          told.add(frame + " for " + length + ": " + returns[0][0]);
          return --wanted > 0;
        }

        @Override
        public void lost(LostFrames lost) {
          told.add(lost.frame() + " lost " + lost.frames());
        }
      };

  private void fill(long frame, int length) {
    ring.free()[0][0] = frame;
    ring.put(frame, length);
  }

  @Test
  void givesBlocksInTheirOrder() {
    for (int frame = 0; frame < 40; frame += 8) {
      fill(frame, 4);
      fill(frame + 4, 4);
      assertTrue(ring.empty(listener));
    }
    assertEquals(10, told.size());
    assertEquals("36 for 4: 36.0", told.get(9));
    assertEquals(40, ring.next());
  }

  @Test
  void tellsOfFramesLeftOutAndOfFramesThatCameTwice() {
    fill(4, 4);
    fill(6, 2);
    ring.empty(listener);
    assertEquals(List.of("0 lost 4", "4 for 4: 4.0", "6 lost -2", "6 for 2: 6.0"), told);
  }

  @Test
  void leavesOutWhatASlowListenerHasNoPlaceForAndSaysSo() {
    for (int frame = 0; frame < 12; frame += 4) {
      fill(frame, 4);
    }
    assertNull(ring.free());
    ring.empty(listener);
    fill(20, 4);
    ring.empty(listener);
    assertEquals(List.of("12 lost 8", "20 for 4: 20.0"), told.subList(3, 5));
  }

  @Test
  void endsWhenTheListenerHasEnough() {
    wanted = 1;
    fill(0, 4);
    fill(4, 4);
    assertFalse(ring.empty(listener));
    assertEquals(1, told.size());
  }
}
