package dev.loopgauge.screen.state;

import dev.loopgauge.report.measured.ComparisonRecord;
import dev.loopgauge.report.measured.MeasurementRecord;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * How late a path was measured to be, by what its budget is compared with.
 *
 * @param loop the delay of what a cable carries
 * @param laterMs how much later than predicted that is, in ms
 * @param uncertaintyMs its expanded uncertainty (k = 2), in ms
 */
record MeasuredDelay(Latency loop, double laterMs, double uncertaintyMs) {
  /** Of a reading; empty where it has no number or no budget. */
  static Optional<MeasuredDelay> of(Taken taken) {
    return taken
        .document()
        .measurement()
        .flatMap(measured -> taken.document().comparison().map(c -> of(measured, c)));
  }

  private static MeasuredDelay of(MeasurementRecord measured, ComparisonRecord comparison) {
    SampleRate rate = new SampleRate(measured.sampleRateHz());
    BigDecimal loop = comparison.predictedSamples().add(comparison.differenceSamples());
    return new MeasuredDelay(
        new Latency(loop.doubleValue(), rate),
        ReadingState.laterMs(comparison),
        measured.delay().toMs(measured.uncertaintySamples().doubleValue()));
  }
}
