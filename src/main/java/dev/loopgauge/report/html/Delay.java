package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Fields;
import dev.loopgauge.report.form.Numbers;
import java.util.Optional;

/**
 * A measured delay as it is shown, with no digit beyond what was resolved.
 *
 * @param samples the delay in samples
 * @param uncertaintySamples its expanded uncertainty in samples, positive
 * @param rateHz the sample rate
 */
record Delay(double samples, double uncertaintySamples, double rateHz) {
  private static final int MOST_SAMPLE_DECIMALS = 3;
  private static final int MOST_MS_DECIMALS = 4;

  /** The delay in a measurement; empty where a figure is missing or makes no sense. */
  static Optional<Delay> of(Fields measurement) {
    Optional<Double> samples = measurement.number("delaySamples");
    Optional<Double> uncertainty = measurement.number("uncertaintySamples").filter(u -> u > 0);
    Optional<Double> rate = measurement.number("sampleRateHz").filter(hertz -> hertz > 0);
    return samples.isPresent() && uncertainty.isPresent() && rate.isPresent()
        ? Optional.of(new Delay(samples.get(), uncertainty.get(), rate.get()))
        : Optional.empty();
  }

  /** Samples at this rate in ms. */
  double toMs(double count) {
    return count * 1000 / rateHz;
  }

  /** The delay in ms. */
  double ms() {
    return toMs(samples);
  }

  /** {@code 723.02 ± 0.04}. */
  String inSamples() {
    return Numbers.plusMinus(samples, uncertaintySamples, MOST_SAMPLE_DECIMALS);
  }

  /** {@code 15.0629 ± 0.0009}. */
  String inMs() {
    return Numbers.plusMinus(ms(), toMs(uncertaintySamples), MOST_MS_DECIMALS);
  }

  /** How many decimals of a sample are resolved. */
  int sampleDecimals() {
    return Numbers.decimalsFor(uncertaintySamples, MOST_SAMPLE_DECIMALS);
  }
}
