package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.Response;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** The envelope of what came back, as documents hold it. */
public record ResponseRecord(
    Optional<BigDecimal> firstSamples,
    Optional<BigDecimal> stepSamples,
    List<BigDecimal> levelsDb) {
  /** Of a response. */
  static ResponseRecord of(Response response) {
    return new ResponseRecord(
        Optional.of(Written.samples(response.firstSamples())),
        Optional.of(Written.samples(response.stepSamples())),
        response.levelsDb().stream().map(Written::db).toList());
  }
}
