package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Response;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The envelope of what came back, as documents hold it. */
public record ResponseRecord(
    Optional<BigDecimal> firstSamples,
    Optional<BigDecimal> stepSamples,
    List<BigDecimal> levelsDb) {
  /** Of a measurement, where it knows its path's response. */
  static Optional<ResponseRecord> of(Optional<Measurement> measurement) {
    return measurement.isPresent() && measurement.get().response().isPresent()
        ? Optional.of(of(measurement.get().response().get()))
        : Optional.empty();
  }

  private static ResponseRecord of(Response response) {
    List<BigDecimal> levels = new ArrayList<>();
    for (double db : response.levelsDb()) {
      levels.add(Written.db(db));
    }
    return new ResponseRecord(
        Optional.of(Written.samples(response.firstSamples())),
        Optional.of(Written.samples(response.stepSamples())),
        levels);
  }
}
