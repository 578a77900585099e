package dev.loopgauge.report.planned;

import dev.loopgauge.plan.Setting;
import dev.loopgauge.report.form.Numbers;

/** A block size and a rate, as documents hold them. */
public record SettingRecord(int blockSize, int sampleRateHz) {
  /** Of a setting. */
  static SettingRecord of(Setting setting) {
    return new SettingRecord(setting.blockSize(), setting.rate().hertz());
  }

  /** In words. */
  String told() {
    return "block " + blockSize + " at " + kilohertz(sampleRateHz) + " kHz";
  }

  /** A sample rate as people say it, without its unit. */
  static String kilohertz(int hertz) {
    return Numbers.brief(hertz / 1000.0, 3);
  }
}
