package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.When;
import dev.loopgauge.journal.store.Journals;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Entries of two laptops that come together by export and import, and clocks that disagree. */
class TwoLaptopsTest {
  private static final String SHOW = "Harbour, Friday";

  @TempDir private Path folder;

  /** A reading of this many samples in the n-th minute. */
  private static Entry entry(long n, When when, double samples) {
    return Entries.entry(Entries.heading(n, SHOW, when, "vocal", samples));
  }

  private static UUID id(Entry entry) {
    return entry.heading().id();
  }

  private static String shortId(Entry entry) {
    return entry.heading().shortId();
  }

  private Run run(String laptop, String... args) {
    String journal = folder.resolve(laptop).toString();
    return Run.on(false, "", Map.of("LOOPGAUGE_JOURNAL", journal), args);
  }

  private static String told(Run run) {
    return run.out().replaceAll("\\s+", " ");
  }

  private void keep(String laptop, Entry... entries) throws Exception {
    try (Journal journal = Journals.open(folder.resolve(laptop).toString(), Map.of())) {
      for (Entry entry : entries) {
        journal.append(List.of(entry));
      }
    }
  }

  private Run handOn(String from, String to, String file) {
    Path out = folder.resolve(file);
    assertEquals(ExitCode.GOOD, run(from, "journal", "export", "-o", out.toString()).exitCode());
    Run taken = run(to, "journal", "import", out.toString());
    assertEquals(ExitCode.GOOD, taken.exitCode(), taken.err());
    return taken;
  }

  private final Entry wrong = entry(1, When.BEFORE, 500);
  private final Entry theirs = Entries.correcting(entry(9, When.BEFORE, 600), id(wrong));

  @BeforeEach
  void bothCorrect() throws Exception {
    keep("mine.db", wrong);
    handOn("mine.db", "theirs.db", "first.json");
    keep("mine.db", Entries.correcting(entry(5, When.BEFORE, 595), id(wrong)));
    keep("theirs.db", theirs);
    keep("theirs.db", entry(20, When.AFTER, 600));
  }

  @Test
  void theLaterOfTwoCorrectionsCountsAndBothAreNamed() {
    Run taken = handOn("theirs.db", "mine.db", "second.json");
    assertTrue(told(taken).contains("was corrected on several computers"), taken.out());
    Run compare = run("mine.db", "journal", "compare", "--show", SHOW, "--json");
    assertEquals(ExitCode.GOOD, compare.exitCode(), compare.out());
    assertTrue(compare.out().contains("was corrected on several computers"), compare.out());
    assertEquals(1, ((List<?>) compare.json().get("paths")).size());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "list",
        "compare --show Harbour,_Friday",
        "history --path vocal",
        "show 12345678-9abc-4000-8000-000000000005",
        "show 12345678-9abc-4000-8000-000000000009"
      })
  void everyReaderTellsOfTwoCorrections(String command) {
    handOn("theirs.db", "mine.db", "second.json");
    String[] args = ("journal " + command).split(" ");
    for (int i = 0; i < args.length; i++) {
      args[i] = args[i].replace('_', ' ');
    }
    Run run = run("mine.db", args);
    assertTrue(told(run).contains("was corrected on several computers, by"), run.out() + run.err());
  }

  @Test
  void whatDoesNotCountIsInNoReportAndNoHistory() {
    handOn("theirs.db", "mine.db", "second.json");
    Run history = run("mine.db", "journal", "history", "--path", "vocal", "--json");
    List<?> points = (List<?>) history.json().get("points");
    assertEquals(
        List.of(id(theirs).toString(), id(entry(20, When.AFTER, 600)).toString()),
        points.stream().map(point -> ((Map<?, ?>) point).get("id")).toList());
    Run report = run("mine.db", "report", "--show", SHOW, "--format", "csv");
    assertFalse(report.out().contains("595"), report.out());
  }

  @Test
  void bothLaptopsComeToTheSame() {
    handOn("theirs.db", "mine.db", "second.json");
    handOn("mine.db", "theirs.db", "third.json");
    String compare = run("mine.db", "journal", "compare", "--show", SHOW).out();
    assertEquals(compare, run("theirs.db", "journal", "compare", "--show", SHOW).out());
    assertEquals(ExitCode.GOOD, run("theirs.db", "journal", "check").exitCode());
  }

  /** There is no data folder yet on a laptop that has kept nothing. */
  @Test
  void aNewLaptopTakesWhatIsHandedOn() {
    Path out = folder.resolve("first.json");
    Path data = folder.resolve("new/data");
    Map<String, String> environment = Map.of("LOOPGAUGE_DATA", data.toString());
    Run taken = Run.on(false, "", environment, "journal", "import", out.toString());
    assertEquals(ExitCode.GOOD, taken.exitCode(), taken.err());
    assertEquals(1, data.toFile().list().length);
  }

  /** Within one journal what was kept last counts, whatever its date. */
  @Test
  void aClockThatRanBackIsToldWhereItDecides() throws Exception {
    keep("clock.db", entry(60, When.BEFORE, 700), entry(30, When.BEFORE, 500));
    keep("clock.db", entry(90, When.AFTER, 500));
    Run compare = run("clock.db", "journal", "compare", "--show", SHOW);
    assertEquals(ExitCode.GOOD, compare.exitCode(), compare.out());
    String clock = "counts as later than entry " + shortId(entry(60, When.BEFORE, 700));
    for (String command :
        List.of("list", "compare --show Harbour,_Friday", "history --path vocal")) {
      String[] args = ("journal " + command).split(" ");
      args[args.length - 1] = args[args.length - 1].replace('_', ' ');
      Run run = run("clock.db", args);
      assertTrue(told(run).contains(clock), run.out());
    }
  }

  /** Between journals the time decides, and nothing needs to be said where clocks agree. */
  @Test
  void betweenLaptopsTheTimeDecides() throws Exception {
    keep("one.db", entry(30, When.BEFORE, 500));
    keep("two.db", entry(20, When.BEFORE, 700));
    keep("two.db", entry(90, When.AFTER, 500));
    handOn("two.db", "one.db", "two.json");
    Run compare = run("one.db", "journal", "compare", "--show", SHOW);
    assertEquals(ExitCode.GOOD, compare.exitCode(), compare.out());
    assertFalse(compare.out().contains("note"), compare.out());
  }

  @Test
  void whatIsAddedAfterwardsIsToldAsSuch() throws Exception {
    keep("one.db", entry(30, When.BEFORE, 500), entry(20, When.BEFORE, 600));
    Run list = run("one.db", "journal", "list", "--json");
    assertEquals(1, ((List<?>) list.json().get("notes")).size(), list.out());
  }
}
