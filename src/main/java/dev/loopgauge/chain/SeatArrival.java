package dev.loopgauge.chain;

import dev.loopgauge.signal.Latency;

/**
 * How late a path is at one position.
 *
 * @param position the position
 * @param delay from the source to there, the air included
 * @param afterFirst how much later than the first sound that is heard there
 * @param first that sound: a path, itself too, or {@value #DIRECT_SOUND}
 * @param judged what its listener's limits are applied to there
 * @param standing how that stands
 */
public record SeatArrival(
    String position,
    Latency delay,
    Latency afterFirst,
    String first,
    Judged judged,
    Standing standing) {
  /** What is heard first where no path is. */
  public static final String DIRECT_SOUND = "direct sound";
}
