package dev.loopgauge.report.exchange;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import dev.loopgauge.chain.Nearest;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.form.JsonList;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads the files that {@link EntryWriter} writes. */
public final class EntryFile {
  private static final String FOREIGN = "give a file that `loopgauge journal export` wrote";

  private final String file;
  private final List<Entry> entries = new ArrayList<>();

  private EntryFile(String file) {
    this.file = file;
  }

  /**
   * The entries of an export, CSV or JSON.
   *
   * @param text all of the file
   * @param file what errors call it
   * @throws ExchangeException when it is no export, or any of its entries can't be one
   */
  public static List<Entry> read(String text, String file) throws ExchangeException {
    EntryFile read = new EntryFile(file);
    if (text.stripLeading().startsWith("{")) {
      read.json(text);
    } else {
      read.csv(text);
    }
    return List.copyOf(read.entries);
  }

  private void json(String text) throws ExchangeException {
    JsonList list;
    try {
      list = JsonList.read(text, EntryWriter.ENTRIES);
    } catch (JsonList.BrokenException e) {
      throw new ExchangeException(file, e.line(), "a JSON document", e.getMessage(), FOREIGN);
    }
    Object command = list.head().get("command");
    if (!EntryWriter.COMMAND.equals(command)) {
      String expected = "an export of a journal, \"command\": \"" + EntryWriter.COMMAND + "\"";
      throw new ExchangeException(file, 1, expected, ExchangeException.shown(command), FOREIGN);
    }
    Object schema = list.head().get("schema");
    if (!Integer.valueOf(1).equals(schema)) {
      String hint = "use the newer program that wrote it";
      throw new ExchangeException(file, 1, "schema 1", ExchangeException.shown(schema), hint);
    }
    for (JsonList.Item item : list.items()) {
      entries.add(new EntryReader(file, item.line(), item.values()).entry());
    }
  }

  /** A reader of text in memory need not be closed. */
  private void csv(String text) throws ExchangeException {
    List<String> header = List.of();
    long line = 1;
    try {
      for (CsvRecord record : CsvReader.builder().ofCsvRecord(text)) {
        line = record.getStartingLineNumber();
        if (header.isEmpty()) {
          header = header(record);
        } else {
          entries.add(entry(header, record));
        }
      }
    } catch (CsvParseException e) {
      throw new ExchangeException(file, line, "a table in CSV", "lines that aren't", FOREIGN);
    }
    if (header.isEmpty()) {
      throw new ExchangeException(file, 1, "a line with the keys", "an empty file", FOREIGN);
    }
  }

  private List<String> header(CsvRecord record) throws ExchangeException {
    for (String key : record.getFields()) {
      if (!EntryKeys.ALL.contains(key)) {
        String hint =
            Nearest.name(key, EntryKeys.ALL).isPresent()
                ? Nearest.hint(key, EntryKeys.ALL)
                : FOREIGN;
        throw new ExchangeException(
            file, 1, "the keys of a journal's entries", ExchangeException.shown(key), hint);
      }
    }
    if (!EntryKeys.areComplete(record.getFields())) {
      throw new ExchangeException(
          file,
          1,
          "the %d keys of a journal's entries".formatted(EntryKeys.ALL.size()),
          record.getFieldCount() + ", or one twice",
          FOREIGN);
    }
    return List.copyOf(record.getFields());
  }

  private Entry entry(List<String> header, CsvRecord record) throws ExchangeException {
    long line = record.getStartingLineNumber();
    if (record.getFieldCount() != header.size()) {
      throw new ExchangeException(
          file, line, header.size() + " cells", String.valueOf(record.getFieldCount()), FOREIGN);
    }
    Map<String, Object> keys = new LinkedHashMap<>();
    for (int i = 0; i < header.size(); i++) {
      String cell = record.getField(i);
      keys.put(header.get(i), cell.isEmpty() ? null : value(header.get(i), cell, line));
    }
    return new EntryReader(file, line, keys).entry();
  }

  private Object value(String key, String cell, long line) throws ExchangeException {
    String text = CellText.text(cell);
    if (!key.equals(EntryKeys.SETUP)) {
      return text;
    }
    try {
      return Json.read(text).get(EntryKeys.SETUP);
    } catch (IOException e) {
      throw new ExchangeException(
          file, line, "JSON under 'setup'", ExchangeException.shown(text), FOREIGN);
    }
  }
}
