package dev.loopgauge.report.planned;

import dev.loopgauge.report.form.Csv;
import dev.loopgauge.report.planned.AlignmentDocument.AlignedRecord;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.stream.Stream;

/** The alignment as a table for spreadsheets: RFC 4180, a header, one line for each path. */
public final class AlignmentCsv {
  private AlignmentCsv() {}

  /** The whole file. */
  public static String of(AlignmentDocument document) {
    StringBuilder csv =
        new StringBuilder(
            Csv.line(
                Stream.of(
                    "mix",
                    "path",
                    "source",
                    "delaySamples",
                    "delayMs",
                    "offsetMs",
                    "addSamples",
                    "addMs",
                    "addMetres",
                    "addFeet",
                    "leavesSamples",
                    "firstNullHz")));
    document
        .mixes()
        .forEach(mix -> mix.paths().forEach(path -> csv.append(line(mix.name(), path))));
    return csv.toString();
  }

  private static String line(String mix, AlignedRecord path) {
    return Csv.line(
        Stream.of(
            mix,
            path.path(),
            path.source().orElse(""),
            cell(path.delaySamples()),
            cell(path.delayMs()),
            cell(path.offsetMs()),
            cell(Optional.of(path.addSamples())),
            cell(Optional.of(path.addMs())),
            cell(path.addMetres()),
            cell(path.addFeet()),
            cell(path.leavesSamples()),
            cell(path.firstNullHz())));
  }

  private static String cell(Optional<BigDecimal> number) {
    return number.map(BigDecimal::toPlainString).orElse("");
  }
}
