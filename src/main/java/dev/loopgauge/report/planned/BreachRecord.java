package dev.loopgauge.report.planned;

import dev.loopgauge.plan.Breach;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;

/**
 * What breaks next, as documents hold it.
 *
 * @param hint what to try, where nothing fits
 */
public record BreachRecord(
    int blockSize,
    int sampleRateHz,
    String path,
    Optional<String> kind,
    Optional<BigDecimal> reachedMs,
    Optional<BigDecimal> limitMs,
    Optional<BigDecimal> overMs,
    Optional<String> rule,
    Optional<String> hint)
    implements Sparse {
  /** Of a breach. */
  static BreachRecord of(Breach breach, Optional<String> hint) {
    return new BreachRecord(
        breach.setting().blockSize(),
        breach.setting().rate().hertz(),
        breach.path(),
        Optional.of(breach.kind().label()),
        Optional.of(Written.ms(breach.reachedMs())),
        Optional.of(Written.ms(breach.limitMs())),
        Optional.of(Written.ms(breach.overMs())),
        Optional.of(breach.rule()),
        hint);
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("hint");
  }

  /** What would be too late by how much. */
  String told() {
    boolean picture = kind.equals(Optional.of(Breach.Kind.PICTURE.label()));
    String reached = reachedMs.map(ms -> Numbers.plain(ms.doubleValue(), 1)).orElse("?");
    String over = overMs.map(ms -> Numbers.plainUp(ms.doubleValue(), 1)).orElse("?");
    String limit = limitMs.map(ms -> Numbers.brief(ms.doubleValue(), 2)).orElse("?");
    return path
        + (" would be " + reached + (picture ? " ms behind its picture, " : " ms late, "))
        + (over + " ms over its limit of " + limit + " ms");
  }
}
