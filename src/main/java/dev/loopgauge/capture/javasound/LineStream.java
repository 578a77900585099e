package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.BlockRing;
import java.util.List;

/**
 * A stream laid onto the flow of a session: from one frame of the flow on, its returns are handed
 * on chunk by chunk.
 */
final class LineStream {
  private final BlockRing ring;
  private final List<Integer> returns;
  private long frame;

  /**
   * A stream of one session.
   *
   * @param returns the channels of the input line, counted from 1
   */
  LineStream(List<Integer> returns, int hertz) {
    this.ring = BlockRing.ofTwoSeconds(returns.size(), Pump.CHUNK_FRAMES, hertz);
    this.returns = returns;
  }

  /** Goes on with another frame, after a loss that the listener has been told. */
  void goOnAt(long next) {
    frame = next;
    ring.goOnAt(next);
  }

  /** Takes a chunk of the input line; on the thread that records. */
  void record(float[] chunk, int channels) {
    float[][] free = ring.free();
    if (free != null) {
      for (int ret = 0; ret < free.length; ret++) {
        for (int i = 0; i < Pump.CHUNK_FRAMES; i++) {
          free[ret][i] = chunk[i * channels + returns.get(ret) - 1];
        }
      }
      ring.put(frame, Pump.CHUNK_FRAMES);
    }
    frame += Pump.CHUNK_FRAMES;
  }

  /** Gives the listener what is there; whether it wants more. */
  boolean empty(BlockListener listener) {
    return ring.empty(listener);
  }

  /** The frame that is due. */
  long next() {
    return ring.next();
  }
}
