package dev.loopgauge.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class ReportPageTest {
  private static final Pattern TAGS = Pattern.compile("<style>.*?</style>|<[^>]*>", Pattern.DOTALL);

  private static String page(ReadDocument... readings) {
    return new ReportDocument("Harbour, Friday", "0.1.0", List.of(readings)).html();
  }

  /** What is read in a page, on one line. */
  private static String words(String page) {
    return TAGS.matcher(page).replaceAll(" ").replaceAll("\\s+", " ");
  }

  private static ReadDocument late() {
    return Documents.reading("late.json", Documents.LATE);
  }

  private static ReadDocument within() {
    return Documents.reading("within.json", Documents.WITHIN);
  }

  @Test
  void saysTheVerdictFirst() {
    String words = words(page(late(), within()));
    assertTrue(words.contains("Verdict Not good: vocal-house. Good: 1 of 2."), words);
    assertTrue(
        words.contains("LATE by 128 samples (2.67 ms): vocal-house is slower than budgeted."),
        words);
  }

  @Test
  void saysThatAllIsWellWhenItIs() {
    String other = Documents.WITHIN.replace("vocal-in-ear", "band-in-ear");
    String words = words(page(within(), Documents.reading("other.json", other)));
    assertTrue(words.contains("Verdict Good: all 2."), words);
  }

  @Test
  void printsNoNumberThatCannotBeTrusted() {
    String words = words(page(Documents.reading("no.json", Documents.REFUSED)));
    assertTrue(words.contains("No trustworthy reading: return 2 hears no sweep"), words);
    assertTrue(words.contains("Try: is return 2 the right channel?"), words);
    assertFalse(words.contains("Measured"), words);
  }

  @Test
  void showsTheNumbersOfTheDocumentToTheirResolution() {
    String words = words(page(late()));
    assertTrue(words.contains("measured 723.018 ± 0.036 15.0629 ± 0.0008"), words);
    assertTrue(words.contains("budget 595 ± 3 12.396"), words);
    assertTrue(words.contains("difference +128.018 +2.667"), words);
  }

  @Test
  void addsWhatWasNotMeasuredToTheBarAndSaysSo() {
    String words = words(page(late(), Documents.reading("budget.json", Documents.BUDGET)));
    assertTrue(words.contains("budget, all stages 17.650 847.21"), words);
    assertTrue(words.contains("measured, rest planned 20.317 975.23"), words);
    assertTrue(
        words.contains("Stages that the measurement doesn't run through count as planned."), words);
    assertTrue(words.contains("limit 15 ms"), words);
  }

  @Test
  void showsNoBarWithoutABudget() {
    assertFalse(page(late()).contains("From stage to stage"));
  }

  @Test
  void holdsNoScriptAndNoAddressOfAnother() {
    String page = page(late(), within(), Documents.reading("budget.json", Documents.BUDGET));
    assertFalse(page.contains("<script"), page);
    String elsewhere = page.replaceAll("xmlns(:\\w+)?='http://www\\.[\\w./]+'", "");
    assertFalse(Pattern.compile("(?i)https?:|src=|@import|url\\((?!#)").matcher(elsewhere).find());
  }

  @Test
  void namesEachIdOnce() {
    String page = page(late(), within(), Documents.reading("budget.json", Documents.BUDGET));
    List<String> ids =
        Pattern.compile(" id=['\"]([^'\"]+)").matcher(page).results().map(r -> r.group(1)).toList();
    assertTrue(ids.size() > 5, ids::toString);
    assertEquals(ids.stream().distinct().toList(), ids);
  }

  @Test
  void givesTheSamePageForTheSameDocuments() {
    assertEquals(page(late(), within()), page(late(), within()));
  }
}
