package dev.loopgauge.report.logged;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a command did to a journal, or found in it.
 *
 * @param command the command
 * @param outcome what it came to, as a name
 * @param lines what to say, one sentence each
 * @param figures the same by keys
 */
public record JournalNotice(
    String command, String outcome, List<String> lines, Map<String, Object> figures)
    implements Document {
  /** Copies lists and maps. */
  public JournalNotice {
    lines = List.copyOf(lines);
    figures = new LinkedHashMap<>(figures);
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    lines.forEach(line -> sheet.line(OneLine.line(line)));
    return sheet.toString();
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head(command, outcome);
    json.putAll(figures);
    return json;
  }
}
