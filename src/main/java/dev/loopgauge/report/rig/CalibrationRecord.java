package dev.loopgauge.report.rig;

import dev.loopgauge.measure.Calibration;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;

/** A calibration, as documents hold it. */
public record CalibrationRecord(
    String measuredAt,
    String backend,
    String output,
    String input,
    int sampleRateHz,
    int bufferSamples,
    int send,
    int ret,
    BigDecimal delaySamples,
    BigDecimal delayMs,
    BigDecimal uncertaintySamples) {
  private static final int MOST_DECIMALS = 3;

  /** Of a calibration. */
  static CalibrationRecord of(Calibration calibration) {
    double uncertainty = calibration.uncertaintySamples();
    return new CalibrationRecord(
        calibration.measuredAt().toString(),
        calibration.backend(),
        calibration.output(),
        calibration.input(),
        calibration.rate().hertz(),
        calibration.bufferSamples(),
        calibration.cable().send(),
        calibration.cable().ret(),
        Written.samples(calibration.delaySamples(), uncertainty),
        Written.ms(calibration.delay().ms(), uncertainty * 1000 / calibration.rate().hertz()),
        Written.uncertainSamples(uncertainty));
  }

  /** The cable's delay in words. */
  String told() {
    return Numbers.plusMinus(
            delaySamples.doubleValue(), uncertaintySamples.doubleValue(), MOST_DECIMALS)
        + (" samples  " + Numbers.plain(delayMs.doubleValue(), MOST_DECIMALS) + " ms");
  }

  /** What it holds for, in words. */
  String conditions() {
    return backend
        + (", " + output + " send " + send)
        + (" to " + input + " return " + ret)
        + (", " + sampleRateHz + " Hz, block " + bufferSamples);
  }
}
