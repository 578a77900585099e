package dev.loopgauge.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.Heading;
import java.util.Collections;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Each part shows the numbers of its document, and is not there without it. */
class ReportPartsTest {
  private static final Pattern UNREAD =
      Pattern.compile("<style>.*?</style>|<svg.*?</svg>|<[^>]*>", Pattern.DOTALL);

  private static final String THEATRE = words(Shows.theatre().html());

  /** What is read in a page outside its plots, on one line. */
  private static String words(String page) {
    return UNREAD.matcher(page).replaceAll(" ").replaceAll("\\s+", " ").replace("&#x27;", "'");
  }

  private static String alone(String json) {
    return words(
        new ReportDocument("Show", "0.1.0", List.of(Documents.reading("it.json", json))).html());
  }

  private static void assertShown(String expected) {
    assertTrue(THEATRE.contains(expected), expected + " in " + THEATRE);
  }

  @Test
  void namesEachArrival() {
    assertShown("What came back");
    assertShown("budget 12.396 595 measured 15.063 723.02 0.0 A, inverted 18.990 911.50 -12.5");
    assertShown("Another arrival is marked A.");
  }

  @Test
  void drawsNoResponseThatADocumentDoesNotHave() {
    assertFalse(alone(Documents.LATE).contains("What came back"));
    String damaged =
        Documents.LATE.replaceFirst("\\}\\s*$", ",\"response\":{\"levelsDb\":[1,null]}}");
    assertFalse(alone(damaged).contains("What came back"));
  }

  @Test
  void givesEachBandItsUncertainty() {
    assertShown("125 724.1 1.3 15.085 250 723.40 0.60 15.071");
    assertFalse(alone(Documents.WITHIN).contains("By octave band"));
  }

  @Test
  void givesNoPlusMinusWhereTheCardsOwnDelayIsInTheNumber() {
    String calibrated = alone(Documents.LATE);
    assertTrue(calibrated.contains("measured 723.018 ± 0.036 15.0629 ± 0.0008"), calibrated);
    assertTrue(calibrated.contains("125 724.1 1.3 15.085"), calibrated);

    String page = alone(Documents.LATE.replace("referenced", "uncalibrated"));
    assertTrue(page.contains("measured 723.018 15.0629"), page);
    assertTrue(page.contains("125 724.1 - 15.085"), page);
  }

  @Test
  void putsBeforeBesideAfter() {
    assertShown("Changed by +128.008 ± 0.051 samples (+2.6668 ± 0.0011 ms)");
    assertShown("delay, samples 595.010 ± 0.036 723.018 ± 0.036");
    assertShown("The same within the uncertainty of both: +0.000 ± 0.071 samples");
    assertShown("Changed from before to after: vocal-house.");
    assertFalse(alone(Documents.LATE).contains("Before and after"));
  }

  @Test
  void followsAPathOverShows() {
    assertShown("Over shows");
    assertShown("15. Lantern Theatre, show 8, before, 2026-11-22 18:40 659.020 ± 0.040 +64.005");
    assertShown("The dashed line is the median, 595.02 samples.");
  }

  @Test
  void tellsATerminalWhatChanged() {
    String text = Shows.theatre().text();
    assertTrue(text.startsWith("Not good: vocal-house. Good: 1 of 2."), text);
    assertTrue(text.contains("+128.008 ± 0.051 samples against before, CHANGED"), text);
    assertTrue(text.lines().allMatch(line -> line.length() <= 80), text);
  }

  @Test
  void drawsTheLastReadingsOfManyYears() {
    ReportDocument theatre = Shows.theatre();
    List<Heading> years =
        Collections.nCopies(50, theatre.past()).stream().flatMap(List::stream).toList();
    String page =
        new ReportDocument("Show", "0.1.0", theatre.readings(), years, PageLayout.PLAIN).html();
    assertTrue(words(page).contains("The last 100 readings."));
    assertTrue(page.length() < 500_000, () -> "" + page.length());
  }

  @Test
  void saysByHowMuchAListenerHearsItTooLate() {
    assertShown("Over its listener's limit: heard after 20.32 ms, 5.32 ms more than the 15 ms");
  }

  @Test
  void standsSoundAgainstPicture() {
    assertShown("stream-mix within; add 38.2 ms to the sound +38.2");
    assertFalse(alone(Documents.WITHIN).contains("Sound against picture"));
  }

  @Test
  void takesMeasuredSoundAgainstItsPicture() {
    String late = Documents.LATE.replace("vocal-house", "stream-mix");
    String page =
        words(
            new ReportDocument(
                    "Show",
                    "0.1.0",
                    List.of(
                        Documents.reading("late.json", late),
                        Documents.reading("budget.json", Documents.BUDGET)))
                .html());
    assertTrue(page.contains("stream-mix, as measured +35.6"), page);
  }

  @Test
  void drawsTheLineThroughBlockSizesAndNamesOutliers() {
    assertShown("2.0000 ± 0.0003 blocks and 219 samples (4.563 ms) that stay at every size.");
    assertShown("256, outlier 19.250 15.229 +4.021");
    assertShown("the reading at 256 lies 4.02 ms off the line Try: read it again");
  }

  @Test
  void datesTheStepsOfARecording() {
    assertShown("The delay jumped 2 times. Between jumps the clocks drift by 0.120 ppm.");
    assertShown("0:06:40.0 595.30 659.30 +64.00 +1 0:15:00.0 659.30 595.30 -64.00 -1");
    assertShown("Delay by window, 20 of 300");
  }

  @Test
  void countsWhatHappenedInASoak() {
    assertShown("takes 900 with sound lost 1");
    assertShown("0:06:20.3 64 samples were lost");
  }

  @Test
  void listsChannelsPairsChoicesAndDelaysToAdd() {
    assertShown("2 measured 140.250 ± 0.052 2.922 3 not-trustworthy - -");
    assertShown("1 to 2 140.25 0.82 1 to 3 - -");
    assertShown("64 48000 1.333 32 48000 0.667");
    assertShown("vocal-wedge 262.00 5.458");
  }

  @Test
  void saysWhatWasMeasuredWithWhat() {
    assertShown("vocal-house, after 27 Nov 2026, 21:50:12 +01:00 Europe/Zurich");
    assertShown("Set: clock-leader stage box");
    assertShown("Card's block 64 samples");
    assertShown("Note Curtain in; audience in the front rows only.");
    assertShown("Chain file lantern.yaml, SHA-256 ");
  }

  @Test
  void readsHeadingsInTheirOrder() {
    List<String> levels =
        Pattern.compile("<h([1-6])")
            .matcher(Shows.theatre().html())
            .results()
            .map(found -> found.group(1))
            .toList();
    assertEquals("1", levels.get(0));
    for (int i = 1; i < levels.size(); i++) {
      int down = Integer.parseInt(levels.get(i)) - Integer.parseInt(levels.get(i - 1));
      assertTrue(down <= 1, levels::toString);
    }
  }
}
