package dev.loopgauge.capture;

import java.util.concurrent.atomic.AtomicLong;

/**
 * Hands blocks from the thread that records to the one that listens. It holds as many as it has
 * places, whatever happens; when the listener is too slow the newest blocks are left out, and the
 * numbers of their frames tell.
 *
 * <p>One thread fills it and never waits, allocates or throws; another empties it.
 */
public final class BlockRing {
  private final float[][][] samples;
  private final long[] frames;
  private final int[] lengths;
  private final AtomicLong filled = new AtomicLong();
  private final AtomicLong emptied = new AtomicLong();
  private long next;

  /**
   * An empty ring.
   *
   * @param returns how many arrays a block has
   * @param blockFrames how long a block may be
   * @param places how many blocks it holds
   */
  public BlockRing(int returns, int blockFrames, int places) {
    samples = new float[places][returns][blockFrames];
    frames = new long[places];
    lengths = new int[places];
  }

  /** A ring that holds two seconds and more of blocks. */
  public static BlockRing ofTwoSeconds(int returns, int blockFrames, int hertz) {
    return new BlockRing(returns, blockFrames, Math.max(8, 2 * hertz / blockFrames + 1));
  }

  /** The arrays to fill next; null while there is no place. To be followed by {@link #put}. */
  public float[][] free() {
    return filled.get() - emptied.get() < samples.length ? samples[place(filled.get())] : null;
  }

  /**
   * Puts what was filled in.
   *
   * @param frame the number of its first frame
   * @param length how many frames it has
   */
  public void put(long frame, int length) {
    int place = place(filled.get());
    frames[place] = frame;
    lengths[place] = length;
    filled.incrementAndGet();
  }

  /** The number of the frame that is due. */
  public long next() {
    return next;
  }

  /** Goes on with another frame than the one due, after a loss that the listener has been told. */
  public void goOnAt(long frame) {
    next = frame;
  }

  /**
   * Gives the listener all blocks that are there.
   *
   * @return whether it wants more
   */
  public boolean empty(BlockListener listener) {
    boolean more = true;
    while (more && emptied.get() < filled.get()) {
      more = give(place(emptied.get()), listener);
      emptied.incrementAndGet();
    }
    return more;
  }

  private boolean give(int place, BlockListener listener) {
    long frame = frames[place];
    if (frame > next) {
      listener.lost(new LostFrames(next, frame - next, (frame - next) + " frames were left out."));
    } else if (frame < next) {
      listener.lost(new LostFrames(frame, frame - next, (next - frame) + " frames came twice."));
    }
    next = frame + lengths[place];
    return listener.block(frame, samples[place], lengths[place]);
  }

  private int place(long count) {
    return (int) (count % samples.length);
  }
}
