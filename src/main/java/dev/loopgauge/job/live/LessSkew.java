package dev.loopgauge.job.live;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.measure.Calibration;
import dev.loopgauge.measure.LiveMeasurement;
import dev.loopgauge.report.form.Numbers;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;

/**
 * Against the reference, less the kept skew of the two pairs of channels.
 *
 * @param live the measurement
 * @param skew the skew
 */
record LessSkew(LiveMeasurement live, Calibration skew) implements Repeatable {
  private static final int MOST_DECIMALS = 3;

  @Override
  public Estimate take() throws CaptureException {
    return live.lessSkew(skew);
  }

  @Override
  public List<String> notes() {
    String samples =
        Numbers.signedPlusMinus(skew.delaySamples(), skew.uncertaintySamples(), MOST_DECIMALS);
    return List.of(
        "the skew of the two pairs of channels is taken off: "
            + (samples + " samples, calibrated on " + day()));
  }

  private LocalDate day() {
    return skew.measuredAt().atZone(ZoneOffset.UTC).toLocalDate();
  }
}
