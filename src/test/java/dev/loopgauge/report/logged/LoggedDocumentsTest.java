package dev.loopgauge.report.logged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.AspectChange;
import dev.loopgauge.journal.Cause;
import dev.loopgauge.journal.Compared;
import dev.loopgauge.journal.ComparedAspect;
import dev.loopgauge.journal.Corrections;
import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.History;
import dev.loopgauge.journal.PathPair;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.form.Unbinder;
import dev.loopgauge.verify.Shift;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Documents about the journal: what is written as JSON is read as the same record. */
class LoggedDocumentsTest {
  private static final String SHOW = "Harbour, Friday";
  private static final Cause CAUSE =
      new Cause("host-blocks", "one block more", Cause.Standing.LIKELY);

  private static Heading heading(long n, When when, String path, double samples) {
    return Entries.heading(n, SHOW, when, path, samples);
  }

  private static List<Heading> headings() {
    return List.of(
        heading(1, When.BEFORE, "house", 595),
        heading(2, When.BEFORE, "ears", 118),
        Entries.nasty(3, new SplittableRandom(8)).heading(),
        heading(4, When.AFTER, "house", 659));
  }

  private static CompareDocument comparison() {
    return CompareDocument.of(
        "before",
        "after",
        PathPair.beforeAndAfter(headings()).stream()
            .map(
                pair ->
                    new Compared(
                        pair, List.of(new AspectChange.Level(-12)), List.of(CAUSE), List.of()))
            .toList());
  }

  /** Paths a to f changed, g was not measured after, h is the same; in another order. */
  private static CompareDocument several() {
    List<Heading> show = new ArrayList<>();
    for (String path : List.of("h", "g", "a", "b", "c", "d", "e", "f")) {
      int n = show.size();
      show.add(heading(n, When.BEFORE, path, 595));
      if (!path.equals("g")) {
        show.add(heading(100 + n, When.AFTER, path, path.equals("h") ? 595 : 659));
      }
    }
    return CompareDocument.of(
        "before",
        "after",
        PathPair.beforeAndAfter(show).stream()
            .map(pair -> new Compared(pair, moved(pair), List.of(), List.of()))
            .toList());
  }

  private static List<AspectChange> moved(PathPair pair) {
    return pair.shift()
        .filter(Shift::moved)
        .map(shift -> List.<AspectChange>of(new AspectChange.Delay(shift, 1.3)))
        .orElse(List.of());
  }

  @Test
  void comparisonNamesFourChangedPathsAndCountsTheOthers() {
    String flat = several().text().replaceAll("\\s+", " ");
    assertTrue(
        flat.startsWith(
            "1 of 8 paths the same, 6 CHANGED: a (delay), b (delay), c (delay), d (delay) and 2"
                + " more; 1 not measured after. "),
        flat);
  }

  @Test
  void comparisonListsWhatChangedFirstAndWhatIsTheSameLast() {
    assertEquals(
        List.of("a", "b", "c", "d", "e", "f", "g", "h"),
        several().paths().stream().map(path -> path.path().orElseThrow()).toList());
  }

  private static HistoryDocument history() {
    List<Heading> headings =
        IntStream.range(0, 14)
            .mapToObj(n -> heading(n, When.BEFORE, "house", n < 4 ? 595 : 659))
            .toList();
    return HistoryDocument.of(
        "house",
        History.of(headings).orElseThrow(),
        List.of(List.of(CAUSE)),
        Map.of(headings.get(3).id(), List.of(ComparedAspect.LOST_SOUND)),
        List.of("a clock ran back"));
  }

  static Stream<Document> documents() {
    Entry entry = Entries.entry(1);
    return Stream.of(
        JournalListDocument.of(
            headings(), Corrections.of(headings()), false, List.of("a clock ran back")),
        JournalListDocument.of(List.of(), Corrections.NONE, true, List.of()),
        ShowsDocument.of(headings()),
        EntryDocument.of(
            entry, Map.of("schema", 1), Optional.of(headings().get(3).id()), List.of("twice")),
        EntryDocument.of(
            Entries.nasty(5, new SplittableRandom(9)), Map.of(), Optional.empty(), List.of()),
        comparison(),
        history(),
        ImportDocument.of(5, 2, List.of("a.csv is cut.")),
        ExportDocument.of(Path.of("out.csv"), 5, 2, 1),
        CheckDocument.of(
            4, Optional.of(headings().get(3)), List.of("entry 1 is not as it was stored"), 3),
        CheckDocument.of(0, Optional.empty(), List.of(), 0));
  }

  @ParameterizedTest
  @MethodSource("documents")
  void whatIsWrittenIsReadWithTheSameText(Document document) throws IOException {
    String json = Json.write(document);
    Class<? extends Record> kind = document.getClass().asSubclass(Record.class);
    Document again = (Document) Unbinder.read(kind, Json.read(json)).orElseThrow();
    assertEquals(document.text(), again.text());
    assertEquals(json, Json.write(again));
  }

  @Test
  void anEntryKeepsTheOrderOfItsKeys() throws IOException {
    assertEquals(
        "[id, at, zone, show, when, path, outcome, standing, sampleRateHz, delaySamples,"
            + " delayMs, uncertaintySamples, corrects, correctedBy]",
        keys(JournalListDocument.of(headings(), Corrections.NONE, true, List.of()), "entries"));
    assertEquals(
        "[id, at, zone, show, when, path, outcome, standing, sampleRateHz, delaySamples,"
            + " delayMs, uncertaintySamples, corrects, mark, changedAspects]",
        keys(history(), "points"));
  }

  private static String keys(Document document, String list) throws IOException {
    List<?> entries = (List<?>) Json.read(Json.write(document)).get(list);
    return ((Map<?, ?>) entries.get(0)).keySet().toString();
  }

  @Test
  void aStepTellsItsCauseAndHowSureItIs() {
    assertTrue(history().text().contains("    likely     one block more\n"), history().text());
  }

  @Test
  void anEntryOfAnotherTimeFormatIsLeftOut() throws IOException {
    String json = Json.write(JournalListDocument.of(headings(), Corrections.NONE, true, List.of()));
    String broken = json.replaceFirst("\"at\" : \"[^\"]*\"", "\"at\" : \"yesterday\"");
    JournalListDocument read =
        Unbinder.read(JournalListDocument.class, Json.read(broken)).orElseThrow();
    assertEquals(headings().size() - 1, read.entries().size());
  }
}
