package dev.loopgauge.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** What every adapter keeps to, by streams. */
public abstract class StreamContract {
  /** Opens that many sends and returns of the rig. */
  protected abstract AudioSession open(int sends, int returns) throws Exception;

  /** How many channels the rig has. */
  protected int channels() {
    return 1;
  }

  @Test
  public void aStreamHasEveryFrameOnceUntilItsListenerHasEnough() throws Exception {
    try (AudioSession session = open(channels(), channels())) {
      Listener listener = new Listener(session.info().rate().hertz() / 2);
      session.stream(listener);
      assertTrue(listener.next >= listener.enough, "ended at frame " + listener.next);
      assertEquals(channels(), listener.returns);
    }
  }

  @Test
  public void aStreamCanBeginAgain() throws Exception {
    try (AudioSession session = open(1, 1)) {
      session.stream(new Listener(5_000));
      Listener again = new Listener(5_000);
      session.stream(again);
      assertTrue(again.next >= again.enough, "ended at frame " + again.next);
    }
  }

  /** What a listener throws ends the stream, and reaches the one who asked for it. */
  @Test
  public void aListenerThatFailsEndsTheStream() throws Exception {
    try (AudioSession session = open(1, 1)) {
      assertThrows(Tired.class, () -> session.stream(new Failing()));
      session.stream(new Listener(5_000));
    }
  }

  @Test
  public void aClosedSessionStreamsNoMore() throws Exception {
    AudioSession session = open(1, 1);
    session.close();
    assertThrows(Exception.class, () -> session.stream(new Listener(100)));
    session.close();
  }

  /** Counts frames; those that were lost are told, or the count is wrong. */
  protected static final class Listener implements BlockListener {
    private final long enough;
    private long next;
    private int returns;

    /** Has enough after that many frames. */
    public Listener(long enough) {
      this.enough = enough;
    }

    @Override
    public boolean block(long frame, float[][] samples, int length) {
      assertEquals(next, frame, "the block after a loss that was told, or after the last one");
      assertTrue(length > 0 && length <= samples[0].length, "a block of " + length);
      returns = samples.length;
      next = frame + length;
      return next < enough;
    }

    @Override
    public void lost(LostFrames lost) {
      assertTrue(lost.frame() <= next, lost + " after frame " + next);
      next = lost.frame() + Math.max(lost.frames(), 0);
    }
  }

  private static final class Tired extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  private static final class Failing implements BlockListener {
    @Override
    public boolean block(long frame, float[][] samples, int length) {
      throw new Tired();
    }

    @Override
    public void lost(LostFrames lost) {
      // What is lost says nothing here.
    }
  }
}
