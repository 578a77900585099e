package dev.loopgauge.cli;

import dev.loopgauge.report.html.Reading;
import dev.loopgauge.report.html.ReportDocument;
import java.nio.file.Path;
import java.util.List;

/** Where the contents of reports come from. */
final class ReportSources {
  private ReportSources() {}

  /**
   * A report of documents in files.
   *
   * @throws UsageException when one can't be read, or is none that a report can show
   */
  static ReportDocument ofFiles(List<Path> files) {
    List<Reading> readings = files.stream().map(ReportSources::reading).toList();
    String title = readings.size() == 1 ? readings.get(0).source() : "Measurements";
    return new ReportDocument(title, LoopgaugeCommand.Version.number(), readings);
  }

  private static Reading reading(Path file) {
    ResultFile document = ResultFile.read(file, "measure");
    Reading reading = Reading.ofFile(file.getFileName().toString(), document.values());
    if (!reading.isShown()) {
      throw document.lacks(
          "a document that a report can show",
          "give what measure, analyze, series, budget, plan or align printed with --json");
    }
    return reading;
  }
}
