package dev.loopgauge.report.html;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.report.form.Csv;
import dev.loopgauge.report.form.Fields;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The measurements as a table for spreadsheets: RFC 4180, a header, one line for each. */
final class ReportCsv {
  private static final List<String> WHERE = List.of("source", "at", "show", "when", "path");

  private static final List<String> MEASURED =
      List.of(
          "sampleRateHz",
          "delaySamples",
          "delayMs",
          "uncertaintySamples",
          "uncertaintyMs",
          "polarity",
          "levelDb",
          "signalToNoiseDb",
          "method");

  private static final List<String> COMPARED =
      List.of("predictedSamples", "toleranceSamples", "differenceSamples", "verdict");

  private ReportCsv() {}

  /** The whole file. */
  static String of(List<Reading> readings) {
    StringBuilder csv =
        new StringBuilder(
            Csv.line(
                Stream.of(WHERE, List.of("outcome"), MEASURED, COMPARED, List.of("findings"))
                    .flatMap(List::stream)));
    readings.stream().filter(Reading::measures).map(ReportCsv::line).forEach(csv::append);
    return csv.toString();
  }

  private static String line(Reading reading) {
    List<Object> cells = new ArrayList<>();
    Optional<Entry> entry = reading.entry();
    cells.add(reading.source());
    cells.add(
        entry.map(e -> DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(e.heading().at())).orElse(""));
    cells.add(entry.map(e -> e.heading().show()).orElse(""));
    cells.add(reading.when().map(when -> when.label()).orElse(""));
    cells.add(reading.path());
    cells.add(reading.outcome());
    MEASURED.forEach(key -> cells.add(value(reading, "measurement", key)));
    COMPARED.forEach(key -> cells.add(value(reading, "comparison", key)));
    cells.add(
        String.join(
            " ",
            reading.fields().parts("findings").stream()
                .flatMap(finding -> finding.text("code").stream())
                .toList()));
    return Csv.line(cells.stream());
  }

  private static Object value(Reading reading, String part, String key) {
    Map<?, ?> values = reading.fields().part(part).<Map<?, ?>>map(Fields::values).orElse(Map.of());
    Object value = values.get(key);
    return value == null ? "" : value;
  }
}
