package dev.loopgauge.job.kept;

import dev.loopgauge.job.Answer;
import dev.loopgauge.job.TextFile;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.html.ReportDocument;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/**
 * A report on its way to a file or to the screen.
 *
 * @param report what it says
 */
public record Reporting(ReportDocument report) {
  /** A report as it is printed. */
  private record Printed(ReportDocument report, String text) implements Document {
    @Override
    public Map<String, Object> json() {
      return report.json();
    }
  }

  /**
   * Writes it.
   *
   * @param format how; empty for what suits the place
   * @param file where; empty for the screen
   * @throws UsageException when there is such a file already, or it can't be written
   */
  public Answer answer(Optional<ReportFormat> format, Optional<Path> file) {
    if (file.isEmpty()) {
      return Answer.good(new Printed(report, as(format.orElse(ReportFormat.TEXT))));
    }
    TextFile.writeNew(file.get(), as(format.orElse(ReportFormat.HTML)));
    String verdict = report.text().lines().findFirst().orElse("");
    return Answer.good(new Printed(report, verdict + "\nWritten to " + file.get() + ".\n"));
  }

  private String as(ReportFormat format) {
    System.setProperty("java.awt.headless", "true"); // plots need fonts, never a screen

    return switch (format) {
      case HTML -> report.html();
      case JSON -> Json.write(report) + "\n";
      case CSV -> report.csv();
      case TEXT -> report.text();
    };
  }
}
