package dev.loopgauge.report.exchange;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import dev.loopgauge.chain.Nearest;
import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.report.form.Json;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads exports in CSV. */
final class CsvExport {
  private final String text;
  private final String file;
  private final boolean hasOpenQuote;
  private final List<KeptEntry> entries = new ArrayList<>();
  private List<String> header = List.of();
  private Optional<Integer> leftOut = Optional.empty();
  private long line;

  CsvExport(String text, String file) {
    this.text = text;
    this.file = file;
    // Within a quoted cell a quote stands twice, so whole tables have an even number.
    this.hasOpenQuote = text.chars().filter(c -> c == '"').count() % 2 == 1;
  }

  /** A reader of text in memory need not be closed. */
  EntryFile read() throws ExchangeException {
    try {
      Iterator<CsvRecord> records =
          CsvReader.builder()
              .allowExtraFields(true)
              .allowMissingFields(true)
              .ofCsvRecord(text)
              .iterator();
      while (records.hasNext()) {
        CsvRecord record = records.next();
        line = record.getStartingLineNumber();
        if (hasOpenQuote && !records.hasNext()) {
          throw refused(
              "a quote at the end of a cell", "the end of the file", ExchangeException.CUT);
        }
        read(record);
      }
    } catch (CsvParseException e) {
      line++; // each entry stands on one line
      throw refused("a table in CSV", "lines that aren't", ExchangeException.FOREIGN);
    }
    if (header.isEmpty()) {
      throw refused("a line with the keys", "an empty file", ExchangeException.FOREIGN);
    }
    checkEnd();
    return new EntryFile(entries, leftOut.orElse(0), leftOut.isPresent());
  }

  private void read(CsvRecord record) throws ExchangeException {
    if (header.isEmpty()) {
      header = header(record);
      return;
    }
    if (leftOut.isPresent()) {
      throw refused("nothing behind the last line", "more", ExchangeException.FOREIGN);
    }
    if (record.getFieldCount() != header.size()) {
      String found = String.valueOf(record.getFieldCount());
      throw refused(header.size() + " cells", found, ExchangeException.FOREIGN);
    }
    if (record.getField(0).equals(EntryWriter.END)) {
      end(record);
    } else {
      entries.add(entry(record));
    }
  }

  private void end(CsvRecord record) throws ExchangeException {
    if (!record.getField(1).equals(String.valueOf(entries.size()))) {
      String expected = ExchangeException.shown(record.getField(1)) + " entries";
      throw refused(expected, String.valueOf(entries.size()), ExchangeException.CUT);
    }
    try {
      leftOut = Optional.of(Integer.valueOf(record.getField(2)));
    } catch (NumberFormatException e) {
      String found = ExchangeException.shown(record.getField(2));
      throw refused("how many entries were left out", found, ExchangeException.FOREIGN);
    }
  }

  /** Exports of older versions have no last line of their own, but every line has its end. */
  private void checkEnd() throws ExchangeException {
    boolean older = !header.contains(EntryKeys.DIGEST);
    if (older ? !text.endsWith("\n") : leftOut.isEmpty()) {
      throw refused(
          "a last line that says how many entries there are", "none", ExchangeException.CUT);
    }
  }

  private List<String> header(CsvRecord record) throws ExchangeException {
    for (String key : record.getFields()) {
      if (!EntryKeys.ALL.contains(key)) {
        String hint =
            Nearest.name(key, EntryKeys.ALL).isPresent()
                ? Nearest.hint(key, EntryKeys.ALL)
                : ExchangeException.FOREIGN;
        throw refused("the keys of a journal's entries", ExchangeException.shown(key), hint);
      }
    }
    if (!EntryKeys.areComplete(record.getFields())) {
      throw refused(
          "the %d keys of a journal's entries".formatted(EntryKeys.ALL.size()),
          record.getFieldCount() + ", or one twice",
          ExchangeException.FOREIGN);
    }
    return List.copyOf(record.getFields());
  }

  private KeptEntry entry(CsvRecord record) throws ExchangeException {
    Map<String, Object> keys = new LinkedHashMap<>();
    for (int i = 0; i < header.size(); i++) {
      String cell = record.getField(i);
      keys.put(header.get(i), cell.isEmpty() ? null : value(header.get(i), cell));
    }
    return new ExportedEntryReader(file, line, keys).entry();
  }

  private Object value(String key, String cell) throws ExchangeException {
    String value = CellText.text(cell);
    if (!key.equals(EntryKeys.SETUP)) {
      return value;
    }
    try {
      return Json.read(value).get(EntryKeys.SETUP);
    } catch (IOException e) {
      throw refused(
          "JSON under 'setup'", ExchangeException.shown(value), ExchangeException.FOREIGN);
    }
  }

  private ExchangeException refused(String expected, String found, String hint) {
    return new ExchangeException(file, Math.max(1, line), expected, found, hint);
  }
}
