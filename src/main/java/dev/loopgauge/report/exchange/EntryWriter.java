package dev.loopgauge.report.exchange;

import dev.loopgauge.journal.Entry;
import dev.loopgauge.report.form.Csv;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Json;
import java.io.Closeable;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;

/** Writes entries one after the other, a line each. */
public final class EntryWriter implements Closeable {
  /** The command in the head of a JSON export. */
  static final String COMMAND = "journal export";

  /** The key of the entries in a JSON export. */
  static final String ENTRIES = "entries";

  private final Writer out;
  private final boolean csv;
  private boolean first = true;

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
  public void write(Entry entry) throws IOException {
    Map<String, Object> keys = EntryKeys.of(entry);
    if (csv) {
      out.write(Csv.line(keys.values().stream().map(EntryWriter::cell)));
    } else {
      out.write(first ? "\n" : ",\n");
      out.write(Json.line(keys));
    }
    first = false;
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

  /** Ends the file and closes it. */
  @Override
  public void close() throws IOException {
    if (!csv) {
      out.write("\n]}\n");
    }
    out.close();
  }
}
