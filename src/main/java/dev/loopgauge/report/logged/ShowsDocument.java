package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The shows in the journal.
 *
 * @param shows the shows in the order of their first entries
 */
public record ShowsDocument(String command, String outcome, List<ShowRecord> shows)
    implements Document {
  private static final int SHOW_COLUMNS = 36;

  /**
   * A show.
   *
   * @param firstAt when its first entry was measured, as ISO 8601 writes it
   * @param entries how many entries it has
   * @param paths how many paths these are of
   */
  public record ShowRecord(String show, String firstAt, int entries, int paths) {
    /**
     * Checks the time.
     *
     * @throws java.time.DateTimeException when it can't be read
     */
    public ShowRecord {
      OffsetDateTime.parse(firstAt);
    }

    private static ShowRecord of(List<Heading> headings) {
      Heading first = headings.get(0);
      return new ShowRecord(
          first.show(),
          first.at().toOffsetDateTime().toString(),
          headings.size(),
          (int) headings.stream().map(Heading::path).distinct().count());
    }

    private String first() {
      return Logs.brief(OffsetDateTime.parse(firstAt).toZonedDateTime());
    }
  }

  /** The shows that entries belong to, these in the order of time. */
  public static ShowsDocument of(List<Heading> headings) {
    return new ShowsDocument(
        "journal list",
        "listed",
        headings.stream()
            .collect(Collectors.groupingBy(Heading::show, LinkedHashMap::new, Collectors.toList()))
            .values()
            .stream()
            .map(ShowRecord::of)
            .toList());
  }

  @Override
  public String text() {
    if (shows.isEmpty()) {
      return "No shows.\n  try  `loopgauge measure ... --journal --show NAME --when before`\n";
    }
    Sheet sheet = new Sheet();
    new Table<ShowRecord>()
        .words("show", show -> OneLine.brief(show.show(), SHOW_COLUMNS))
        .words("first entry", ShowRecord::first)
        .figures("entries", show -> String.valueOf(show.entries()))
        .figures("paths", show -> String.valueOf(show.paths()))
        .lines(shows)
        .forEach(line -> sheet.asIs(line.substring(2)));
    return sheet.toString();
  }
}
