package dev.loopgauge.report.html;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.report.form.Document;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What was measured at a show, or stands in documents, put together.
 *
 * @param title the show's name, or what else to call it
 * @param toolVersion the version of this program
 * @param readings the documents, in the order of their time
 * @param past what the journal knows of their paths, over all shows, in the order of its time
 * @param layout how it is to look
 */
public record ReportDocument(
    String title,
    String toolVersion,
    List<ReadDocument> readings,
    List<Heading> past,
    PageLayout layout)
    implements Document {
  /** A report of documents alone. */
  public ReportDocument(String title, String toolVersion, List<ReadDocument> readings) {
    this(title, toolVersion, readings, List.of(), PageLayout.PLAIN);
  }

  /**
   * Copies the lists.
   *
   * @throws IllegalArgumentException when there is nothing to report
   */
  public ReportDocument {
    readings = List.copyOf(readings);
    past = List.copyOf(past);
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("a report needs 1 document or more, not 0");
    }
  }

  /** The same under another title, or looking otherwise. */
  public ReportDocument with(Optional<String> newTitle, PageLayout newLayout) {
    return new ReportDocument(newTitle.orElse(title), toolVersion, readings, past, newLayout);
  }

  /** The report as one file for a browser. */
  public String html() {
    return new Page(this).text();
  }

  /** What it is made from and by what, one sentence. */
  String made() {
    String from = readings.size() == 1 ? "1 document" : readings.size() + " documents";
    return "From " + from + ", by Loopgauge " + toolVersion + ".";
  }

  /** One row for each measurement. */
  public String csv() {
    return ReportCsv.of(readings);
  }

  @Override
  public String text() {
    return ReportText.of(this);
  }

  /** The report by its keys. */
  private record Printed(
      String command,
      String outcome,
      String title,
      String toolVersion,
      List<ReadingRecord> readings) {}

  /** The record that its JSON is written from. */
  public static Class<? extends Record> keys() {
    return Printed.class;
  }

  @Override
  public Map<String, Object> json() {
    return Document.json(
        new Printed(
            "report",
            "reported",
            title,
            toolVersion,
            readings.stream().map(ReadingRecord::of).toList()));
  }
}
