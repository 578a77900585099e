package dev.loopgauge.report.rig;

import dev.loopgauge.chain.CheckFinding;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sheet;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What is wrong or missing in a chain file.
 *
 * @param outcome {@code clean}, or {@code notices} where there are any
 * @param file the file, by its name alone
 * @param chain the rig's name
 * @param notices what is wrong, then what is missing
 */
public record ChainCheckDocument(
    String command, String outcome, String file, String chain, List<NoticeRecord> notices)
    implements Document {
  private static final String WRONG = "wrong";
  private static final String MISSING = "missing";

  /**
   * Something that is wrong or missing.
   *
   * @param kind {@code wrong} where it can't be meant so, {@code missing} where less can be said
   *     without it
   * @param text what, one sentence
   * @param hint what to try
   */
  public record NoticeRecord(String kind, String text, String hint) {
    private static NoticeRecord of(CheckFinding found) {
      return new NoticeRecord(
          found.kind().name().toLowerCase(Locale.ROOT), found.text(), found.hint());
    }
  }

  /** The document of a check. */
  public static ChainCheckDocument of(String file, String chain, List<CheckFinding> found) {
    List<NoticeRecord> notices = found.stream().map(NoticeRecord::of).toList();
    return new ChainCheckDocument(
        "check", notices.isEmpty() ? "clean" : "notices", file, chain, notices);
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet().line(headline());
    List<NoticeRecord> left = new ArrayList<>(notices);
    while (!left.isEmpty()) {
      String hint = left.get(0).hint();
      left.stream()
          .filter(notice -> notice.hint().equals(hint))
          .forEach(notice -> sheet.row(notice.kind(), notice.text()));
      sheet.row("try", hint);
      left.removeIf(notice -> notice.hint().equals(hint));
    }
    return sheet.toString();
  }

  private String headline() {
    return notices.isEmpty()
        ? "CLEAN: nothing is wrong or missing in " + file + "."
        : "CHECK: " + counted() + " in " + file + ".";
  }

  private String counted() {
    long wrong = count(WRONG);
    long missing = count(MISSING);
    String first = (wrong == 1 ? "1 thing is" : wrong + " things are") + " wrong";
    String second = missing + " missing";
    if (wrong == 0) {
      return (missing == 1 ? "1 thing is" : missing + " things are") + " missing";
    }
    return missing == 0 ? first : first + ", " + second;
  }

  private long count(String kind) {
    return notices.stream().filter(notice -> notice.kind().equals(kind)).count();
  }
}
