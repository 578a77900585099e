package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Entries of the journal, a line each.
 *
 * @param headings the entries in the order of time
 * @param newer the entries that no longer stand, each with the one that corrects it
 * @param all whether these are all that were asked for, rather than the last of them
 */
public record JournalListDocument(List<Heading> headings, Map<UUID, UUID> newer, boolean all)
    implements Document {
  private static final int SHOW_COLUMNS = 12;
  private static final int VERDICT_COLUMNS = 9;
  private static final int PATH_COLUMNS = 11;

  /** Copies the list. */
  public JournalListDocument {
    headings = List.copyOf(headings);
    newer = Map.copyOf(newer);
  }

  @Override
  public String text() {
    if (headings.isEmpty()) {
      return "No entries.\n  try  `loopgauge measure ... --journal --show NAME --when before`\n";
    }
    Sheet sheet = new Sheet();
    new Table<Heading>()
        .words("id", Heading::shortId)
        .words("measured at", heading -> Logs.listed(heading.at()))
        .words("show", heading -> OneLine.brief(heading.show(), SHOW_COLUMNS))
        .words("", heading -> heading.when().label())
        .words("path", heading -> Logs.path(heading, PATH_COLUMNS))
        .words("verdict", JournalListDocument::verdict)
        .figures("samples", this::delay)
        .lines(headings)
        .forEach(line -> sheet.asIs(line.substring(2)));
    if (headings.stream().anyMatch(heading -> newer.containsKey(heading.id()))) {
      sheet.line("x  corrected by a later entry: `loopgauge journal show ID` names it");
    }
    if (!all) {
      sheet.line("The last " + headings.size() + "; --last N shows more, --show NAME one show.");
    }
    return sheet.toString();
  }

  /** Within or outside its budget, or what else it came to. */
  private static String verdict(Heading heading) {
    return switch (heading.outcome()) {
      case "within-budget" -> "within";
      case "outside-budget" -> "outside";
      case "not-trustworthy" -> "no number";
      default -> OneLine.brief(heading.outcome(), VERDICT_COLUMNS);
    };
  }

  private String delay(Heading heading) {
    String delay = heading.delay().map(Logs::bare).orElse("none");
    return newer.containsKey(heading.id()) ? "x " + delay : delay;
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("journal list", "listed");
    json.put("entries", headings.stream().map(this::entry).toList());
    json.put("all", all);
    return json;
  }

  private Map<String, Object> entry(Heading heading) {
    Map<String, Object> json = Logs.json(heading);
    UUID by = newer.get(heading.id());
    json.put("correctedBy", by == null ? null : by.toString());
    return json;
  }
}
