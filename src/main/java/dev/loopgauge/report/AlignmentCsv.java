package dev.loopgauge.report;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The alignment as a table for spreadsheets: RFC 4180, a header, one line for each path. */
public final class AlignmentCsv {
  private static final String NEWLINE = "\r\n";

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
    StringBuilder csv = new StringBuilder(line(Stream.concat(Stream.of("mix"), KEYS.stream())));
    for (Object mix : (List<?>) document.json().get("mixes")) {
      Map<?, ?> fields = (Map<?, ?>) mix;
      for (Object path : (List<?>) fields.get("paths")) {
        Map<?, ?> cells = (Map<?, ?>) path;
        csv.append(
            line(
                Stream.concat(
                    Stream.of(fields.get("name")), KEYS.stream().map(key -> cells.get(key)))));
      }
    }
    return csv.toString();
  }

  private static String line(Stream<?> cells) {
    return cells.map(cell -> quoted(Objects.toString(cell, ""))).collect(Collectors.joining(","))
        + NEWLINE;
  }

  private static String quoted(String cell) {
    return cell.matches("[^\",\\r\\n]*") ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }
}
