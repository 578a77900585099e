package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.journal.When;
import dev.loopgauge.journal.store.Journals;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class JournalCommandTest {
  private static final String CHAIN =
      """
      sample-rate: 48000
      block-size: 64
      stages:
        desk: { samples: 118 }
        host-blocks: { blocks: 2 }
        limiter: { samples: 349 }
      paths:
        vocal-house: { listener: house, stages: [desk, host-blocks, limiter] }
        band-in-ear: { listener: house, stages: [host-blocks] }
      mixes:
        front: [vocal-house, band-in-ear]
      """;

  private static final String FRIDAY = "Harbour, Friday";
  private static final String SATURDAY = "Harbour, Saturday";

  @TempDir private Path folder;

  private Run run(String... args) {
    return Run.on(false, "", environment("journal.db"), args);
  }

  private Map<String, String> environment(String file) {
    return Map.of("LOOPGAUGE_JOURNAL", folder.resolve(file).toString());
  }

  private static Entry entry(long n, String show, When when, String path, double samples) {
    Entry plain = Entries.entry(Entries.heading(n, show, when, path, samples));
    return new Entry(
        plain.heading(),
        plain.note(),
        plain.setup(),
        plain.document(),
        Optional.of(new ChainText("hall.yaml", CHAIN)),
        plain.card(),
        plain.capture(),
        plain.toolVersion());
  }

  private void keep(Entry... entries) throws Exception {
    try (Journal journal = Journals.open(folder.resolve("journal.db").toString(), Map.of())) {
      journal.append(List.of(entries));
    }
  }

  private static String id(long n) {
    return Entries.entry(n).heading().id().toString();
  }

  @BeforeEach
  void keepTwoShows() throws Exception {
    keep(
        entry(1, FRIDAY, When.BEFORE, "vocal-house", 595),
        entry(2, FRIDAY, When.BEFORE, "band-in-ear", 118),
        entry(3, FRIDAY, When.AFTER, "vocal-house", 595.004),
        entry(4, FRIDAY, When.AFTER, "band-in-ear", 182),
        entry(5, SATURDAY, When.BEFORE, "vocal-house", 595),
        entry(6, SATURDAY, When.BEFORE, "band-in-ear", 117.99));
  }

  private static void assertFits(Run run) {
    run.out().lines().forEach(line -> assertTrue(line.length() <= 80, line));
  }

  @Test
  void compareSaysWhatChangedAndWhy() {
    Run run = run("journal", "compare", "--show", FRIDAY);
    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.err());
    assertFits(run);
    assertTrue(run.out().startsWith("1 of 2 paths the same, 1 CHANGED: band-in-ear (delay).\n"));
    List<String> lines = run.out().lines().toList();
    assertTrue(lines.get(2).contains("band-in-ear"), run.out());
    assertTrue(lines.get(lines.size() - 1).contains("same (difference"), run.out());
    assertTrue(run.out().contains("same (difference 0.00 ± 0.06)"), run.out());
    assertTrue(run.out().contains("CHANGED +64.00 ± 0.06 (+1.33 ms)"), run.out());
    assertTrue(run.out().contains("likely"), run.out());
    assertTrue(run.out().contains("3 blocks of 64"), run.out());
    Map<String, Object> json = run("journal", "compare", "--show", FRIDAY, "--json").json();
    assertEquals("changed", json.get("outcome"));
    Map<?, ?> band = (Map<?, ?>) ((List<?>) json.get("paths")).get(0);
    assertEquals(64, band.get("differenceSamples"));
    assertEquals("likely", ((Map<?, ?>) ((List<?>) band.get("causes")).get(0)).get("standing"));
  }

  @Test
  void compareWithAnotherShowAtTheSamePartOfTheDay() {
    Run run = run("journal", "compare", "--show", SATURDAY, "--with", FRIDAY);
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertTrue(run.out().startsWith("2 of 2 paths the same."), run.out());
    Run after = run("journal", "compare", "--show", SATURDAY, "--with", FRIDAY, "--when", "after");
    assertEquals(ExitCode.NOT_TRUSTWORTHY, after.exitCode(), after.out());
    assertTrue(after.out().startsWith("0 of 2 paths the same, 2 not measured now."), after.out());
  }

  @Test
  void oneSideAloneIsNotTheSame() {
    Run run = run("journal", "compare", "--show", SATURDAY);
    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertTrue(run.out().contains("not measured after"), run.out());
  }

  @Test
  void aCorrectionTakesThePlaceOfWhatItCorrects() throws Exception {
    Entry right = entry(7, FRIDAY, When.AFTER, "band-in-ear", 118.01);
    keep(Entries.correcting(right, Entries.entry(4).heading().id()));
    Run run = run("journal", "compare", "--show", FRIDAY);
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    Run list = run("journal", "list", "--show", FRIDAY, "--path", "band-in-ear");
    assertTrue(list.out().contains("x 182.00"), list.out());
    assertTrue(list.out().contains("corrected by a later entry"), list.out());
    assertTrue(run("journal", "show", id(4)).out().contains("corrected    by entry"));
    assertTrue(run("journal", "show", id(7)).out().contains("corrects     entry"));
  }

  @Test
  void listShowsTheLastEntriesAndTheShows() {
    Run run = run("journal", "list", "--last", "2");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertFits(run);
    assertEquals(4, run.out().lines().count(), run.out());
    assertTrue(run.out().contains("The last 2;"), run.out());
    assertTrue(run.out().contains("117.99"), run.out());
    Run shows = run("journal", "list", "--shows");
    assertFits(shows);
    assertTrue(shows.out().lines().anyMatch(l -> l.matches(FRIDAY + " .* 4 +2")), shows.out());
    List<?> entries =
        (List<?>) run("journal", "list", "--when", "after", "--json").json().get("entries");
    assertEquals(2, entries.size());
  }

  @Test
  void showTellsAllByTheBeginningOfAnId() {
    Run run = run("journal", "show", id(1));
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    for (String told :
        List.of("595.000 ± 0.040 samples", "all as planned", "clock-leader = desk", "a.wav.gz")) {
      assertTrue(run.out().contains(told), run.out());
    }
    run("journal", "show", id(1).substring(0, 8)).assertRefused("begins with 12345678, found 6");
    run("journal", "show", "no-id!").assertRefused("expected an id");
    assertEquals(
        "measure",
        ((Map<?, ?>) run("journal", "show", id(1), "--json").json().get("document"))
            .get("command"));
  }

  @Test
  void historyFollowsAPathOverShows() {
    Run run = run("journal", "history", "--path", "band-in-ear");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertFits(run);
    assertTrue(run.out().startsWith("band-in-ear: 3 entries"), run.out());
    assertEquals(
        3,
        ((List<?>)
                run("journal", "history", "--path", "band-in-ear", "--json").json().get("points"))
            .size());
  }

  @ParameterizedTest
  @ValueSource(strings = {"csv", "json"})
  void anExportGoesIntoAnotherJournalUnchanged(String format) throws Exception {
    SplittableRandom random = new SplittableRandom(77);
    List<Entry> nasty = new ArrayList<>();
    for (int n = 0; n < 60; n++) {
      nasty.add(Entries.nasty(n, random));
    }
    keep(nasty.toArray(Entry[]::new));
    Path file = folder.resolve("out");
    Run export = run("journal", "export", "--format", format, "-o", file.toString());
    assertEquals(ExitCode.GOOD, export.exitCode(), export.err());
    assertTrue(export.out().contains("66 entries written"), export.out());
    assertTrue(export.out().contains("copy these too"), export.out());
    Run into = Run.on(false, "", environment("b.db"), "journal", "import", file.toString());
    assertEquals("66 entries read, 66 of them new, 0 there already.\n", into.out(), into.err());
    Run again =
        Run.on(false, "", environment("b.db"), "journal", "import", file.toString(), "--json");
    assertEquals(0, again.json().get("new"));
    try (Journal one = Journals.open(folder.resolve("journal.db").toString(), Map.of());
        Journal other = Journals.open(folder.resolve("b.db").toString(), Map.of())) {
      for (Heading heading : one.headings(Selection.ALL)) {
        assertEquals(one.entry(heading.id()), other.entry(heading.id()), "seed 77");
      }
    }
    Run printed = run("journal", "export", "--format", format);
    assertEquals(Files.readString(file), printed.out());
    run("journal", "export", "-o", file.toString()).assertRefused("exists already");
  }

  /** Was taken as 5 new entries, one of them cut, and could never be put right. */
  @Test
  void anExportCutOffIsRefusedAndTheRightOneTakenAfterwards() throws Exception {
    Path good = folder.resolve("good.csv");
    run("journal", "export", "--format", "csv", "-o", good.toString());
    String text = Files.readString(good);
    Path cut = Files.writeString(folder.resolve("cut.csv"), text.substring(0, text.length() - 400));
    Run refused = Run.on(false, "", environment("d.db"), "journal", "import", cut.toString());
    refused.assertRefused("cut.csv:7: expected a quote at the end of a cell");
    assertTrue(refused.err().contains("it was cut off"), refused.err());
    Run taken = Run.on(false, "", environment("d.db"), "journal", "import", good.toString());
    assertEquals("6 entries read, 6 of them new, 0 there already.\n", taken.out(), taken.err());
  }

  @Test
  void aBrokenFileAddsNothing() throws Exception {
    Path good = folder.resolve("good.csv");
    run("journal", "export", "--format", "csv", "-o", good.toString());
    Path bad = Files.writeString(folder.resolve("bad.csv"), "a,b\n");
    Run run =
        Run.on(
            false, "", environment("c.db"), "journal", "import", good.toString(), bad.toString());
    run.assertRefused("bad.csv:1: expected the keys of a journal's entries, found 'a'");
    assertEquals(
        ExitCode.JOURNAL, Run.on(false, "", environment("c.db"), "journal", "list").exitCode());
  }

  @Test
  void hostileNamesDoNotReachTheTerminal() throws Exception {
    keep(entry(8, "\u001B[31m\u202Ered\n\uD800", When.BEFORE, "p\u0007", 1));
    for (String[] command :
        new String[][] {
          {"journal", "list"}, {"journal", "list", "--shows"}, {"journal", "show", id(8)}
        }) {
      Run run = run(command);
      assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
      assertTrue(run.out().chars().noneMatch(c -> c == 0x1B || c == 0x202E || c == 7), run.out());
    }
  }

  @Test
  void checkIsCleanOrExitsWith5() throws Exception {
    Run clean = run("journal", "check");
    assertEquals(ExitCode.GOOD, clean.exitCode());
    assertTrue(clean.out().startsWith("CLEAN"), clean.out());
    Files.write(folder.resolve("journal.db"), new byte[5000]);
    assertEquals(ExitCode.JOURNAL, run("journal", "check").exitCode());
  }

  @Test
  void alignTakesTheMeasuredDelaysOfAShow() throws Exception {
    String chain =
        Files.writeString(
                folder.resolve("hall.yaml"),
                CHAIN.replace("listener: house,", "listener: house, input: band,"))
            .toString();
    Run run = run("align", chain, "--show", SATURDAY, "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    Map<?, ?> mix = (Map<?, ?>) ((List<?>) run.json().get("mixes")).get(0);
    Map<?, ?> band = (Map<?, ?>) ((List<?>) mix.get("paths")).get(1);
    assertTrue(
        band.get("source")
            .toString()
            .matches("measured 20\\d\\d-\\d\\d-\\d\\d \\d\\d:\\d\\d, before"),
        band.toString());
    assertFits(run("align", chain, "--show", SATURDAY));
    assertEquals(477, band.get("addSamples"));
    run("align", chain, "--show", "Nowhere").assertRefused("no show 'Nowhere'");
    run("align", chain, "--when", "before").assertRefused("--show");
  }

  /** After, the band comes a block late: 182 instead of 118. */
  @Test
  void alignTakesReadingsOfOnePartOfTheDay() throws Exception {
    String chain = Files.writeString(folder.resolve("hall.yaml"), CHAIN).toString();
    keep(entry(7, SATURDAY, When.AFTER, "vocal-house", 595));
    run("align", chain, "--show", SATURDAY)
        .assertRefused("before (band-in-ear) and after (vocal-house)");
    Run before = run("align", chain, "--show", SATURDAY, "--when", "before", "--json");
    assertTrue(before.out().contains(", before\""), before.out());
    Run after = run("align", chain, "--show", FRIDAY, "--json");
    assertTrue(after.out().contains(", after\""), after.out());
    Run outside = run("align", chain, "--show", FRIDAY);
    assertTrue(
        outside.out().contains("check        band-in-ear: measured outside the budget."),
        outside.out());
    run("align", chain, "--show", SATURDAY, "--when", "during").assertRefused("during");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "journal compare --show Harbor            | no show 'Harbor'",
        "journal compare --show a --when before   | --when goes with --with",
        "journal history --path vocal-hose        | 'vocal-house' is the nearest known name",
        "journal list --last 0                    | 0",
        "journal list --show Nobody               | no show 'Nobody'",
        "journal export --format xml              | xml",
        "journal import nowhere.csv               | nowhere.csv"
      })
  void wrongArgumentsAreRefused(String command, String told) {
    run(command.split(" ")).assertRefused(told);
  }

  @Test
  void withoutAJournalItSaysHowToBeginOne() {
    Run run = Run.on(false, "", environment("none.db"), "journal", "list");
    assertEquals(ExitCode.JOURNAL, run.exitCode());
    assertTrue(run.err().contains("begins one"), run.err());
  }
}
