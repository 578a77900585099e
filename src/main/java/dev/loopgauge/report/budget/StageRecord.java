package dev.loopgauge.report.budget;

import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A stage and its predicted delay, as documents hold it. */
public record StageRecord(
    String name,
    Optional<BigDecimal> delaySamples,
    Optional<BigDecimal> delayMs,
    Optional<BigDecimal> toleranceSamples) {
  /** Of stages. */
  static List<StageRecord> of(List<StageDelay> stages) {
    List<StageRecord> records = new ArrayList<>();
    for (StageDelay stage : stages) {
      records.add(of(stage));
    }
    return records;
  }

  private static StageRecord of(StageDelay stage) {
    return new StageRecord(
        stage.name(),
        Optional.of(Written.samples(stage.delay().samples())),
        Optional.of(Written.ms(stage.delay().ms())),
        Optional.of(Written.samples(stage.toleranceSamples())));
  }
}
