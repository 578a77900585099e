package dev.loopgauge.report.exchange;

import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.report.form.JsonList;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Reads exports in JSON. */
final class JsonExport {
  private JsonExport() {}

  static EntryFile read(String text, String file) throws ExchangeException {
    JsonList list;
    try {
      list = JsonList.read(text, EntryWriter.ENTRIES);
    } catch (JsonList.BrokenException e) {
      boolean cut = !text.stripTrailing().endsWith("}");
      String hint = cut ? ExchangeException.CUT : ExchangeException.FOREIGN;
      throw new ExchangeException(file, e.line(), "a JSON document", e.getMessage(), hint);
    }
    checkHead(list.head(), file);
    List<KeptEntry> entries = new ArrayList<>();
    boolean older = true;
    for (JsonList.Item item : list.items()) {
      older &= !item.values().containsKey(EntryKeys.DIGEST);
      entries.add(new ExportedEntryReader(file, item.line(), item.values()).entry());
    }
    if (!older && !list.head().containsKey(EntryWriter.WRITTEN)) {
      String expected = "a last line that says how many entries there are";
      throw new ExchangeException(
          file, text.lines().count(), expected, "none", ExchangeException.CUT);
    }
    return whole(entries, list.head(), file, text.lines().count());
  }

  private static void checkHead(Map<String, Object> head, String file) throws ExchangeException {
    Object command = head.get("command");
    if (!EntryWriter.COMMAND.equals(command)) {
      String expected = "an export of a journal, \"command\": \"" + EntryWriter.COMMAND + "\"";
      String found = ExchangeException.shown(command);
      throw new ExchangeException(file, 1, expected, found, ExchangeException.FOREIGN);
    }
    Object schema = head.get("schema");
    if (!Integer.valueOf(1).equals(schema)) {
      String hint = "use the newer program that wrote it";
      throw new ExchangeException(file, 1, "schema 1", ExchangeException.shown(schema), hint);
    }
  }

  /** Exports of older versions don't say how many entries they hold. */
  private static EntryFile whole(
      List<KeptEntry> entries, Map<String, Object> head, String file, long lastLine)
      throws ExchangeException {
    Object written = head.get(EntryWriter.WRITTEN);
    if (written != null && !written.equals(entries.size())) {
      String expected = ExchangeException.shown(written) + " entries";
      String found = String.valueOf(entries.size());
      throw new ExchangeException(file, lastLine, expected, found, ExchangeException.CUT);
    }
    int leftOut = head.get(EntryWriter.LEFT_OUT) instanceof Integer count ? count : 0;
    return new EntryFile(entries, leftOut, written != null);
  }
}
