package dev.loopgauge.report.rig;

import dev.loopgauge.measure.Calibration;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import java.util.List;
import java.util.Map;

/**
 * A calibration that was kept.
 *
 * @param calibration the calibration
 * @param files where it was written
 */
public record CalibrationDocument(Calibration calibration, List<String> files) implements Document {
  private static final int MOST_DECIMALS = 3;

  /** Copies the list. */
  public CalibrationDocument {
    files = List.copyOf(files);
  }

  @Override
  public String text() {
    Sheet sheet =
        new Sheet()
            .line("CALIBRATED: the sound card itself is late by what follows.")
            .row(
                "cable",
                Numbers.plusMinus(
                        calibration.delaySamples(), calibration.uncertaintySamples(), MOST_DECIMALS)
                    + " samples  "
                    + Numbers.plain(calibration.delay().ms(), MOST_DECIMALS)
                    + " ms")
            .row("holds for", Calibrations.conditions(calibration));
    files.forEach(file -> sheet.row("kept in", file));
    return sheet.toString();
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("calibrate", "calibrated");
    json.put("calibration", Calibrations.json(calibration));
    json.put("files", files);
    return json;
  }
}
