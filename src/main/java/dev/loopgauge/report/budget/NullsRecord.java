package dev.loopgauge.report.budget;

import dev.loopgauge.plan.Comb;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.Optional;

/** Where the nulls of a comb filter are, as documents hold it; null where there are none. */
public record NullsRecord(Optional<BigDecimal> firstNullHz, Optional<BigDecimal> nullSpacingHz) {
  /** Of a comb. */
  static NullsRecord of(Comb comb) {
    return new NullsRecord(Written.hz(comb.firstNullHz()), Written.hz(comb.nullSpacingHz()));
  }

  /** In words: {@code first null 49.2 Hz, then every 98.4 Hz}. */
  String told() {
    return "first null " + Combs.hz(firstNullHz) + ", then every " + Combs.hz(nullSpacingHz);
  }
}
