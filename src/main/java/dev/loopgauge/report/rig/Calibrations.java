package dev.loopgauge.report.rig;

import dev.loopgauge.measure.Calibration;
import dev.loopgauge.report.form.Numbers;
import java.util.LinkedHashMap;
import java.util.Map;

/** Calibrations as parts of documents. */
final class Calibrations {
  private static final int SAMPLE_DECIMALS = 4;
  private static final int MS_DECIMALS = 6;

  private Calibrations() {}

  /** What it holds for, in words. */
  static String conditions(Calibration calibration) {
    return calibration.backend()
        + ", "
        + calibration.output()
        + " send "
        + calibration.cable().send()
        + " to "
        + calibration.input()
        + " return "
        + calibration.cable().ret()
        + ", "
        + calibration.rate().hertz()
        + " Hz, block "
        + calibration.bufferSamples();
  }

  static Map<String, Object> json(Calibration calibration) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("measuredAt", calibration.measuredAt().toString());
    json.put("backend", calibration.backend());
    json.put("output", calibration.output());
    json.put("input", calibration.input());
    json.put("sampleRateHz", calibration.rate().hertz());
    json.put("bufferSamples", calibration.bufferSamples());
    json.put("send", calibration.cable().send());
    json.put("return", calibration.cable().ret());
    json.put("delaySamples", Numbers.rounded(calibration.delaySamples(), SAMPLE_DECIMALS));
    json.put("delayMs", Numbers.rounded(calibration.delay().ms(), MS_DECIMALS));
    json.put(
        "uncertaintySamples", Numbers.roundedUp(calibration.uncertaintySamples(), SAMPLE_DECIMALS));
    return json;
  }
}
