package dev.loopgauge.report.html;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.report.form.Csv;
import dev.loopgauge.report.measured.ComparisonRecord;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.report.measured.MeasurementRecord;
import dev.loopgauge.verify.Verdict;
import java.math.BigDecimal;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
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
  static String of(List<ReadDocument> readings) {
    StringBuilder csv =
        new StringBuilder(
            Csv.line(
                Stream.of(WHERE, List.of("outcome"), MEASURED, COMPARED, List.of("findings"))
                    .flatMap(List::stream)));
    readings.stream().filter(ReadDocument::measures).map(ReportCsv::line).forEach(csv::append);
    return csv.toString();
  }

  private static String line(ReadDocument reading) {
    List<Object> cells = new ArrayList<>();
    Optional<Entry> entry = reading.entry();
    cells.add(reading.source());
    cells.add(
        entry.map(e -> DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(e.heading().at())).orElse(""));
    cells.add(entry.map(e -> e.heading().show()).orElse(""));
    cells.add(reading.when().map(when -> when.label()).orElse(""));
    cells.add(reading.path());
    cells.add(reading.outcome());
    cells.addAll(measured(reading.measured().flatMap(MeasurementDocument::measurement)));
    cells.addAll(compared(reading.comparison()));
    cells.add(
        reading.findings().stream()
            .flatMap(finding -> finding.code().stream())
            .collect(Collectors.joining(" ")));
    return Csv.line(cells.stream());
  }

  private static List<String> measured(Optional<MeasurementRecord> measurement) {
    return List.of(
        measurement.map(m -> String.valueOf(m.sampleRateHz())).orElse(""),
        plain(measurement.map(MeasurementRecord::delaySamples)),
        plain(measurement.flatMap(MeasurementRecord::delayMs)),
        plain(measurement.map(MeasurementRecord::uncertaintySamples)),
        plain(measurement.flatMap(MeasurementRecord::uncertaintyMs)),
        measurement.flatMap(MeasurementRecord::polarity).orElse(""),
        plain(measurement.flatMap(MeasurementRecord::levelDb)),
        plain(measurement.flatMap(MeasurementRecord::signalToNoiseDb)),
        measurement.flatMap(MeasurementRecord::method).orElse(""));
  }

  private static List<String> compared(Optional<ComparisonRecord> comparison) {
    return List.of(
        plain(comparison.map(ComparisonRecord::predictedSamples)),
        plain(comparison.flatMap(ComparisonRecord::toleranceSamples)),
        plain(comparison.map(ComparisonRecord::differenceSamples)),
        comparison.flatMap(ComparisonRecord::verdict).map(Verdict::label).orElse(""));
  }

  private static String plain(Optional<BigDecimal> number) {
    return number.map(BigDecimal::toPlainString).orElse("");
  }
}
