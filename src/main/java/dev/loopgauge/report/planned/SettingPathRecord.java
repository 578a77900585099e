package dev.loopgauge.report.planned;

import dev.loopgauge.plan.DelaySource;
import dev.loopgauge.plan.Feed;
import dev.loopgauge.plan.PictureBlock;
import dev.loopgauge.plan.Routing;
import dev.loopgauge.report.budget.PictureRecord;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;

/**
 * A path at a setting, as documents hold it.
 *
 * @param marginMs what is left to its limit; null without one
 */
public record SettingPathRecord(
    String path,
    Optional<Routing> routing,
    Optional<BigDecimal> delaySamples,
    Optional<BigDecimal> delayMs,
    Optional<BigDecimal> marginMs,
    Optional<DelaySource> source,
    Optional<PictureRecord> picture)
    implements Sparse {
  /** Of a feed. */
  static SettingPathRecord of(Feed feed, Optional<PictureBlock> closest) {
    return new SettingPathRecord(
        feed.path(),
        Optional.of(feed.routing()),
        Optional.of(Written.samples(feed.delay().delay().samples())),
        Optional.of(Written.ms(feed.delay().delay().ms())),
        Written.ms(feed.marginMs()),
        Optional.of(feed.delay().source()),
        feed.picture().map(match -> PictureRecord.of(match, closest)));
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("picture");
  }

  /** Whether it is fed from before the host. */
  boolean isMoved() {
    return routing.filter(way -> way == Routing.BEFORE_HOST).isPresent();
  }

  /** Whether its delay was measured. */
  boolean isMeasured() {
    return source.filter(from -> from == DelaySource.MEASURED).isPresent();
  }
}
