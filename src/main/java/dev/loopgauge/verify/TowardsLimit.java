package dev.loopgauge.verify;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.signal.Latency;
import java.util.Optional;

/**
 * When a path whose clocks are not locked will have become too late for its listener.
 *
 * @param path the path's name
 * @param limitMs the latest that its listener may hear, in ms
 * @param delayMs what the limit was applied to when it was measured, in ms: the loop as measured,
 *     the other stages as stated
 * @param seconds how long after that the limit is passed, in seconds; 0 when it was passed before
 */
public record TowardsLimit(String path, double limitMs, double delayMs, double seconds) {
  private static final double MINUTE = 60;
  private static final double HOUR = 3600;
  private static final double DAY = 86_400;

  /**
   * The time until the limit is passed; empty where the path gets no later, or delay alone does its
   * listener no harm.
   *
   * @param loop the loop's delay as measured
   * @param driftPpm how fast it grows, in parts per million
   */
  public static Optional<TowardsLimit> of(
      Latency loop, double driftPpm, Chain chain, ChainPath path) {
    PathBudget budget = ChainBudget.of(chain, path);
    if (driftPpm <= 0 || budget.limits().limitMs().isEmpty()) {
      return Optional.empty();
    }
    double limit = budget.limits().limitMs().getAsDouble();
    double now = budget.judged().ms() + loop.ms() - budget.loop().ms();
    double seconds = Math.max(0, limit - now) * 1e3 / driftPpm;
    return Optional.of(new TowardsLimit(path.name(), limit, now, seconds));
  }

  /** The same in words, one sentence without its full stop. */
  public String text() {
    String limit = " its " + PlainNumber.of(limitMs, 2) + " ms limit";
    return seconds == 0
        ? path + " is past" + limit + " already and gets later"
        : "at this drift " + path + " passes" + limit + " in about " + time();
  }

  private String time() {
    if (seconds < 2 * MINUTE) {
      return PlainNumber.of(seconds, 0) + " s";
    }
    if (seconds < 2 * HOUR) {
      return PlainNumber.of(seconds / MINUTE, 0) + " min";
    }
    return seconds < 2 * DAY
        ? PlainNumber.of(seconds / HOUR, 0) + " hours"
        : PlainNumber.of(seconds / DAY, 0) + " days";
  }
}
