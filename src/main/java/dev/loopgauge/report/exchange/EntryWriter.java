package dev.loopgauge.report.exchange;

import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.report.form.Csv;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Json;
import java.io.Closeable;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Writes entries one after the other, a line each, and a last line that says how many there are:
 * without it a file was cut off.
 */
public final class EntryWriter implements Closeable {
  /** The command in the head of a JSON export. */
  static final String COMMAND = "journal export";

  /** The key of the entries in a JSON export. */
  static final String ENTRIES = "entries";

  /** What stands in the first cell of the last line of a CSV export, where ids stand above. */
  static final String END = "end";

  /** The key of how many entries there are, in the last line. */
  static final String WRITTEN = "written";

  /** The key of how many entries were left out, in the last line. */
  static final String LEFT_OUT = "leftOut";

  private final Writer out;
  private final boolean csv;
  private int written;

  private EntryWriter(Writer out, boolean csv) {
    this.out = out;
    this.csv = csv;
  }

  /** Begins a CSV file: RFC 4180, the keys in the first line. */
  public static EntryWriter csv(Writer out) throws IOException {
    out.write(Csv.line(EntryKeys.ALL.stream()));
    return new EntryWriter(out, true);
  }

  /** Begins a JSON document with all entries in one list. */
  public static EntryWriter json(Writer out) throws IOException {
    String head = Json.line(Document.head(COMMAND, "exported"));
    out.write(head.substring(0, head.length() - 1) + ",\"" + ENTRIES + "\":[");
    return new EntryWriter(out, false);
  }

  /** Writes an entry. */
  public void write(KeptEntry entry) throws IOException {
    Map<String, Object> keys = EntryKeys.of(entry);
    if (csv) {
      out.write(Csv.line(keys.values().stream().map(EntryWriter::cell)));
    } else {
      out.write(written == 0 ? "\n" : ",\n");
      out.write(Json.line(keys));
    }
    written++;
  }

  private static String cell(Object value) {
    if (value instanceof String text) {
      return CellText.cell(text);
    }
    if (value instanceof BigDecimal number) {
      return number.toPlainString();
    }
    if (value instanceof List<?> setup) {
      return CellText.cell(Json.line(Map.of(EntryKeys.SETUP, setup)));
    }
    return value == null ? "" : value.toString();
  }

  /**
   * Writes the last line.
   *
   * @param leftOut how many entries could not be written
   */
  public void end(int leftOut) throws IOException {
    if (csv) {
      Stream<String> empty = Collections.nCopies(EntryKeys.ALL.size() - 3, "").stream();
      Stream<Object> cells = Stream.of(END, written, leftOut);
      out.write(Csv.line(Stream.concat(cells, empty)));
    } else {
      String last = Json.line(counts(written, leftOut));
      out.write("\n]," + last.substring(1) + "\n");
    }
  }

  /** What the last line of a JSON export says. */
  public static Map<String, Object> counts(int written, int leftOut) {
    Map<String, Object> counts = new LinkedHashMap<>();
    counts.put(WRITTEN, written);
    counts.put(LEFT_OUT, leftOut);
    return counts;
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
