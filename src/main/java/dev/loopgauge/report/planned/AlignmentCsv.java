package dev.loopgauge.report.planned;

import dev.loopgauge.report.form.Csv;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The alignment as a table for spreadsheets: RFC 4180, a header, one line for each path. */
public final class AlignmentCsv {
  /** The columns after the mix, by their keys in the document. */
  private static final List<String> KEYS =
      List.of(
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
          "firstNullHz");

  private AlignmentCsv() {}

  /** The whole file. */
  public static String of(AlignmentDocument document) {
    StringBuilder csv = new StringBuilder(Csv.line(Stream.concat(Stream.of("mix"), KEYS.stream())));
    for (Object mix : (List<?>) document.json().get("mixes")) {
      Map<?, ?> fields = (Map<?, ?>) mix;
      for (Object path : (List<?>) fields.get("paths")) {
        Map<?, ?> cells = (Map<?, ?>) path;
        csv.append(
            Csv.line(
                Stream.concat(
                    Stream.of(fields.get("name")), KEYS.stream().map(key -> cells.get(key)))));
      }
    }
    return csv.toString();
  }
}
