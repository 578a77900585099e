package dev.loopgauge.capture.drivers;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.LostFrames;

/** Sees that each frame comes once or is told as lost. */
final class Counting implements BlockListener {
  private final long enough;
  private long due;
  private int losses;

  Counting(long enough) {
    this.enough = enough;
  }

  @Override
  public boolean block(long frame, float[][] returns, int length) {
    assertEquals(due, frame);
    due = frame + length;
    return due < enough;
  }

  @Override
  public void lost(LostFrames lost) {
    losses++;
    due = lost.frame() + Math.max(0, lost.frames());
  }

  int losses() {
    return losses;
  }
}
