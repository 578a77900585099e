package dev.loopgauge.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;

/** Sees that each frame comes once or is told as lost. */
public final class Counting implements BlockListener {
  private final long enough;
  private long due;
  private int losses;

  /** Listens to this many frames. */
  public Counting(long enough) {
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

  /** How many losses were told. */
  public int losses() {
    return losses;
  }
}
