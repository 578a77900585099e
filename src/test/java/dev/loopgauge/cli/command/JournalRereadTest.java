package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.journal.store.Journals;
import dev.loopgauge.signal.Latency;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Numbers of an older edition of what the delay means, beside those of the present one. */
class JournalRereadTest {
  private static final String CHAIN =
      """
      chain: Hall
      sample-rate: 48000
      block-size: 64
      stages: { desk: { samples: 118 } }
      paths:
        vocal: { listener: house, stages: [desk] }
      """;

  /** How much later than now the older edition read the path. */
  private static final double LATER = 9.5;

  @TempDir private Path folder;

  @BeforeEach
  void writeTheChainFile() throws Exception {
    Files.writeString(folder.resolve("hall.yaml"), CHAIN);
  }

  private String journalFile() {
    return folder.resolve("j.db").toString();
  }

  private Run run(String... args) {
    return Run.on(false, "", Map.of("LOOPGAUGE_JOURNAL", journalFile()), args);
  }

  private void measure(String when, String... more) {
    List<String> args =
        new ArrayList<>(List.of("measure", "--backend=simulated", "--yes", "--seconds=0.25"));
    args.addAll(List.of("--send=2", "--return=2", "--reference-send=1", "--reference-return=1"));
    args.addAll(List.of("--chain=" + folder.resolve("hall.yaml"), "--path=vocal", "--repeat=1"));
    args.addAll(List.of("--journal", "--show=Night", "--when=" + when));
    args.addAll(List.of(more));
    assertEquals(ExitCode.GOOD, run(args.toArray(String[]::new)).exitCode());
  }

  /** Puts an entry of the older edition, which named none, in the place of the last one. */
  private void makeOlder() throws Exception {
    try (Journal journal = Journals.openExisting(journalFile(), Map.of())) {
      List<Heading> all = journal.headings(Selection.ALL);
      Entry last = journal.entry(all.get(all.size() - 1).id()).orElseThrow();
      journal.append(List.of(older(last)));
    }
  }

  private static Entry older(Entry entry) {
    Heading h = entry.heading();
    LoggedDelay kept = h.delay().orElseThrow();
    Latency later = new Latency(kept.delay().samples() + LATER, kept.delay().rate());
    Heading older =
        new Heading(
            UUID.randomUUID(),
            h.at(),
            h.show(),
            h.when(),
            h.path(),
            h.outcome(),
            h.standing(),
            Optional.of(new LoggedDelay(later, kept.uncertaintySamples())),
            Optional.of(h.id()));
    String document = entry.document().replaceFirst("\"definition\"\\s*:\\s*\"2\",", "");
    assertFalse(document.equals(entry.document()), "no edition in " + document);
    return new Entry(
        older,
        entry.note(),
        entry.setup(),
        document,
        entry.chain(),
        entry.card(),
        entry.capture(),
        entry.toolVersion());
  }

  private static String flat(Run run) {
    return run.out().replaceAll("\\s+", " ");
  }

  private Map<?, ?> onlyEntry(Run run) {
    return (Map<?, ?>) ((List<?>) run.json().get("entries")).get(0);
  }

  @Test
  void showsWhatTheNewEditionChanges() throws Exception {
    measure("before", "--keep-capture");
    makeOlder();
    Run run = run("journal", "reread", "--json");
    assertEquals(ExitCode.OUTSIDE, run.exitCode());
    assertEquals("moved", run.json().get("outcome"));
    double moved = ((Number) onlyEntry(run).get("differenceSamples")).doubleValue();
    assertEquals(-LATER, moved, 0.01);
    assertEquals("1", onlyEntry(run).get("edition"));
    String text = flat(run("journal", "reread", "--show=Night"));
    assertTrue(text.contains("By edition 2 1 of 1 older numbers move"), text);
    assertTrue(text.contains("MOVES -9.50"), text);
  }

  @Test
  void hasNothingToSayOfNumbersOfThePresentEdition() {
    measure("before", "--keep-capture");
    Run run = run("journal", "reread");
    assertEquals(ExitCode.GOOD, run.exitCode());
    assertTrue(flat(run).contains("all 1 numbers are of edition 2"), run.out());
  }

  @Test
  void saysWhyAnOlderNumberCanNotBeReadAnew() throws Exception {
    measure("before");
    makeOlder();
    Run run = run("journal", "reread", "--json");
    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    assertEquals("no recording was kept", onlyEntry(run).get("why"));
  }

  @Test
  void doesNotReadARecordingThatWasChanged() throws Exception {
    measure("before", "--keep-capture");
    makeOlder();
    try (var files = Files.list(folder.resolve("j.db-captures"))) {
      Files.writeString(files.findFirst().orElseThrow(), "something else");
    }
    String why = (String) onlyEntry(run("journal", "reread", "--json")).get("why");
    assertTrue(why.contains("is not what was stored"), why);
  }

  @Test
  void comparesByOneEditionWhereARecordingWasKept() throws Exception {
    measure("before", "--keep-capture");
    makeOlder();
    measure("after");
    Run run = run("journal", "compare", "--show=Night");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertTrue(flat(run).contains("the first number was of an older edition"), run.out());
  }

  @Test
  void saysSoWhereItComparesAcrossEditions() throws Exception {
    measure("before");
    makeOlder();
    measure("after");
    Run run = run("journal", "compare", "--show=Night");
    assertEquals(ExitCode.OUTSIDE, run.exitCode());
    String text = flat(run);
    assertTrue(text.contains("stands, since no recording was kept"), text);
    assertTrue(text.contains("of different editions of what the delay means"), text);
  }

  private static int steps(Run history) {
    return ((List<?>) history.json().get("steps")).size();
  }

  /** Six before and six after the edition changed. */
  private Run historyAcrossEditions(String... more) throws Exception {
    for (int n = 0; n < 6; n++) {
      measure("before", more);
      makeOlder();
    }
    for (int n = 0; n < 6; n++) {
      measure("after");
    }
    Run run = run("journal", "history", "--path=vocal", "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    return run;
  }

  @Test
  void aHistoryIsOfOneEditionWhereRecordingsWereKept() throws Exception {
    Run run = historyAcrossEditions("--keep-capture");
    assertEquals(0, steps(run), run.out());
    assertTrue(run.out().contains("6 numbers were of an older edition"), run.out());
  }

  @Test
  void aHistoryWithoutRecordingsStandsAndSaysSo() throws Exception {
    Run run = historyAcrossEditions();
    assertEquals(1, steps(run), run.out());
    assertTrue(run.out().contains("and stand, since of entry"), run.out());
    assertTrue(run.out().contains("of different editions of what the delay means"), run.out());
  }

  @Test
  void comparesTwoOlderNumbersAsTheyAre() throws Exception {
    measure("before");
    makeOlder();
    measure("after");
    makeOlder();
    Run run = run("journal", "compare", "--show=Night");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertFalse(run.out().contains("edition"), run.out());
  }
}
