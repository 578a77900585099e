package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * The shows in the journal.
 *
 * @param shows the entries of each by its name, in the order of time, the last show last
 */
public record ShowsDocument(Map<String, List<Heading>> shows) implements Document {
  private static final int SHOW_COLUMNS = 36;

  /** The shows that entries belong to. */
  public static ShowsDocument of(List<Heading> headings) {
    return new ShowsDocument(
        headings.stream()
            .collect(
                Collectors.groupingBy(Heading::show, LinkedHashMap::new, Collectors.toList())));
  }

  @Override
  public String text() {
    if (shows.isEmpty()) {
      return "No shows.\n  try  `loopgauge measure ... --journal --show NAME --when before`\n";
    }
    Sheet sheet = new Sheet();
    new Table<Map.Entry<String, List<Heading>>>()
        .words("show", show -> OneLine.brief(show.getKey(), SHOW_COLUMNS))
        .words("first entry", show -> Logs.brief(show.getValue().get(0).at()))
        .figures("entries", show -> String.valueOf(show.getValue().size()))
        .figures("paths", show -> String.valueOf(paths(show.getValue())))
        .lines(List.copyOf(shows.entrySet()))
        .forEach(line -> sheet.asIs(line.substring(2)));
    return sheet.toString();
  }

  private static long paths(List<Heading> headings) {
    return headings.stream().map(Heading::path).filter(Objects::nonNull).distinct().count();
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("journal list", "listed");
    json.put("shows", shows.entrySet().stream().map(ShowsDocument::show).toList());
    return json;
  }

  private static Map<String, Object> show(Map.Entry<String, List<Heading>> show) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("show", show.getKey());
    json.put("firstAt", show.getValue().get(0).at().toOffsetDateTime().toString());
    json.put("entries", show.getValue().size());
    json.put("paths", paths(show.getValue()));
    return json;
  }
}
