package dev.loopgauge.report.budget;

import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.plan.EarlierFeed;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** An in-ear path fed from before the host, as documents hold it. */
public record FeedRecord(
    Optional<BigDecimal> delaySamples,
    BigDecimal delayMs,
    Standing standing,
    List<String> leavesOut) {
  /** Of a feed, where there is one. */
  static Optional<FeedRecord> of(Optional<EarlierFeed> feed) {
    return feed.isPresent() ? Optional.of(of(feed.get())) : Optional.empty();
  }

  private static FeedRecord of(EarlierFeed feed) {
    return new FeedRecord(
        Optional.of(Written.samples(feed.delay().samples())),
        Written.ms(feed.delay().ms()),
        feed.standing(),
        feed.spared().stream().map(StageDelay::name).toList());
  }

  /**
   * The advice.
   *
   * @param nowMs the delay that the path has now
   * @param then how its listener would stand, in words
   */
  String told(BigDecimal nowMs, String then) {
    return "feed the in-ear mix from before the host (a second patch of the same input): "
        + (Numbers.inMs(delayMs, 3) + " instead of " + Numbers.inMs(nowMs, 3) + ", " + then)
        + ("; it leaves out " + String.join(", ", leavesOut) + ".");
  }
}
