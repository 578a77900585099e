package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.verify.TowardsLimit;
import java.math.BigDecimal;
import java.util.Optional;

/** When a drifting delay passes its listener's limit, as documents hold it. */
public record LimitRecord(
    String text,
    Optional<BigDecimal> limitMs,
    Optional<BigDecimal> delayMs,
    Optional<BigDecimal> seconds) {
  /** Of a drift towards a limit. */
  public static LimitRecord of(TowardsLimit limit) {
    return new LimitRecord(
        limit.text(),
        Optional.of(Written.ms(limit.limitMs())),
        Optional.of(Written.ms(limit.delayMs())),
        Optional.of(Numbers.rounded(limit.seconds(), 1)));
  }
}
