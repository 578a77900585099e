package dev.loopgauge.measure;

import dev.loopgauge.capture.DeviceRate;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Whether a session ran at the rate that its numbers count by.
 *
 * @param info what was opened
 * @param seen how far the rate is off by this computer's clock, where that could be told
 */
record RateCheck(SessionInfo info, Optional<DeviceRate> seen) {
  /**
   * How far a device's rate may be off. Converters keep within 100 ppm, and so does this computer's
   * clock (common practice, no source): twice both, with some to spare.
   */
  private static final double MOST_PPM = 500;

  /**
   * What a system that takes any rate may be off: the converters of one were seen to be off by 977
   * ppm. The clock can show that, but not that all is well: behind ALSA's layer frames came at the
   * rate that was asked for, within 90 ppm, and the sound in them was 977 ppm too fast.
   */
  private static final double UNKNOWN_PPM = 1_000;

  private static final double PER_PPM = 1e-6;

  /** The estimate refused, less certain, or as it is. */
  Estimate of(Estimate estimate) {
    if (info.rateSource() == RateSource.SERVER || !(estimate instanceof Estimate.Found found)) {
      return estimate;
    }
    if (seen.isPresent() && isWrong(seen.get())) {
      return new Estimate.Refused(List.of(wrong(seen.get())));
    }
    return info.rateSource() == RateSource.DEVICE ? found : unsure(found);
  }

  private static boolean isWrong(DeviceRate rate) {
    return Math.abs(rate.ppm()) > MOST_PPM + rate.uncertaintyPpm();
  }

  private Estimate unsure(Estimate.Found found) {
    double samples = Math.abs(found.measurement().delay().samples()) * UNKNOWN_PPM * PER_PPM;
    List<Finding> findings = new ArrayList<>(found.findings());
    findings.add(converted());
    return new Estimate.Found(found.measurement().widened(samples), findings);
  }

  private Finding wrong(DeviceRate rate) {
    return new Finding(
        FindingCode.RATE_MISMATCH,
        true,
        String.format(
            Locale.ROOT,
            "\"%s\" was opened at %d Hz, but its frames come %.0f ± %.0f ppm too %s by this"
                + " computer's clock",
            info.input(),
            info.rate().hertz(),
            Math.abs(rate.ppm()),
            rate.uncertaintyPpm(),
            rate.ppm() > 0 ? "fast" : "slow"),
        "a layer of the system converts, or the device follows another clock: set the device and"
            + " --sample-rate to one rate");
  }

  private Finding converted() {
    return new Finding(
        FindingCode.RATE_MISMATCH,
        false,
        String.format(
            Locale.ROOT,
            "the system takes any rate for \"%s\" and doesn't say at which the device runs: %.0f ppm"
                + " of the delay are added to the uncertainty",
            info.input(),
            UNKNOWN_PPM),
        "measure by --backend jack, or through a device that states its own rate");
  }
}
