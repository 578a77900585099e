package dev.loopgauge.capture;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.List;

/**
 * What to play, and for how long to record. Playing and recording start together; sends that end
 * early fall silent.
 *
 * @param sends one signal for each send of the session, in its order
 * @param frames how many frames to record, at least 1
 * @param listening the segments in which nothing is played and the returns must not grow louder;
 *     {@link FeedbackGuard} watches them
 * @param watch sees it grow
 */
public record Take(List<Signal> sends, int frames, List<Segment> listening, TakeWatch watch) {
  /** A take that nobody watches. */
  public Take(List<Signal> sends, int frames, List<Segment> listening) {
    this(sends, frames, listening, TakeWatch.NONE);
  }

  /** The same take, watched. */
  public Take watchedBy(TakeWatch other) {
    return new Take(sends, frames, listening, other);
  }

  /**
   * Frames of a take.
   *
   * @param from the first frame
   * @param to the frame after the last
   */
  public record Segment(int from, int to) {
    /**
     * Checks the order.
     *
     * @throws IllegalArgumentException when it ends before it starts
     */
    public Segment {
      if (from < 0 || to < from) {
        throw new IllegalArgumentException("a segment can't run from " + from + " to " + to);
      }
    }
  }

  /**
   * Copies the lists.
   *
   * @throws IllegalArgumentException when there is nothing to record
   */
  public Take {
    if (frames < 1) {
      throw new IllegalArgumentException("a take must record at least one frame, not " + frames);
    }
    sends = List.copyOf(sends);
    listening = List.copyOf(listening);
  }

  /**
   * Checks that a session can play this take, as {@link AudioSession#capture} promises to.
   *
   * @param sendCount how many sends the session has
   * @param rate the session's rate
   * @throws IllegalArgumentException when the take has another number of sends or another rate
   */
  public void checkFits(int sendCount, SampleRate rate) {
    if (sends.size() != sendCount) {
      throw new IllegalArgumentException(
          "the session has " + sendCount + " sends, the take " + sends.size());
    }
    for (Signal send : sends) {
      if (!send.rate().equals(rate)) {
        throw new IllegalArgumentException(
            "the session runs at %d Hz, a send of the take at %d Hz"
                .formatted(rate.hertz(), send.rate().hertz()));
      }
    }
  }
}
