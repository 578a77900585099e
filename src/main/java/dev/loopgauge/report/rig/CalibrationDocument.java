package dev.loopgauge.report.rig;

import dev.loopgauge.measure.Calibration;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sheet;
import java.nio.file.Path;
import java.util.List;

/**
 * A calibration that was kept.
 *
 * @param calibration the calibration
 * @param files where it was written
 */
public record CalibrationDocument(
    String command, String outcome, CalibrationRecord calibration, List<Path> files)
    implements Document {
  /** The document of a calibration and where it was written. */
  public static CalibrationDocument of(Calibration calibration, List<Path> files) {
    return new CalibrationDocument(
        "calibrate", "calibrated", CalibrationRecord.of(calibration), List.copyOf(files));
  }

  @Override
  public String text() {
    Sheet sheet =
        calibration.referenceReturn().isPresent()
            ? new Sheet()
                .line("CALIBRATED: the skew of two pairs of channels, to be taken off.")
                .row("skew", calibration.told())
            : new Sheet()
                .line("CALIBRATED: the delay of the sound card itself, to be taken off.")
                .row("cable", calibration.told());
    sheet.row("holds for", calibration.conditions());
    calibration.doubt().ifPresent(doubt -> sheet.row("note", doubt));
    files.forEach(file -> sheet.row("kept in", file.toString()));
    return sheet.toString();
  }
}
