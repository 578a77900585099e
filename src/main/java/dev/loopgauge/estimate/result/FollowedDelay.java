package dev.loopgauge.estimate.result;

import java.util.List;

/**
 * The delay in one window of a path's sound, and what else was heard in it.
 *
 * @param point the delay, dated to the middle of the window
 * @param atCentre the same, dated to the centre of the sound that tells it: where the programme
 *     pauses within the window that is off the middle, and a drift is told by it
 * @param levelDb the level of the return against its reference, in dB
 * @param inverted whether the return is the reference turned upside down
 * @param bands the level by octave, where it can be told
 * @param lost sound that the return lacks
 * @param doubtful the same, too short to be told by this window alone
 * @param unexplained the share of the return's power that is other sound, 0 or more
 */
public record FollowedDelay(
    TrackPoint point,
    TrackPoint atCentre,
    double levelDb,
    boolean inverted,
    List<Band> bands,
    List<MissingSound> lost,
    List<MissingSound> doubtful,
    double unexplained) {
  /**
   * Checks the level and copies the lists.
   *
   * @throws IllegalArgumentException when the level is not finite
   */
  public FollowedDelay {
    Finite.check("a level", levelDb);
    Finite.check("a share", unexplained);
    bands = List.copyOf(bands);
    lost = List.copyOf(lost);
    doubtful = List.copyOf(doubtful);
  }
}
