package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.LiveBench.CARD;
import static dev.loopgauge.cli.command.LiveBench.backend;
import static dev.loopgauge.cli.command.LiveBench.session;
import static dev.loopgauge.cli.command.LiveBench.wires;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.ScriptedSession;
import dev.loopgauge.capture.file.WavFile;
import dev.loopgauge.cli.Recorded;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.journal.When;
import dev.loopgauge.journal.store.Journals;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalKeepingTest {
  private static final String[] HARBOUR = {"--journal", "--show=Harbour, Friday", "--when=before"};

  @TempDir Path folder;

  @Test
  void keepsAllThatIsNeededToRepeatIt() throws Exception {
    Path chain =
        Files.writeString(
            folder.resolve("hall.yaml"),
            """
            chain: Hall
            sample-rate: 48000
            stages:
              desk: { samples: 595 }
            paths:
              vocal: { listener: house, stages: [desk] }
            """);
    Run run =
        measure(
            at(595),
            "--chain=" + chain,
            "--path=vocal",
            "--note=new snake",
            "--set=clock=desk",
            "--set=network=1 ms",
            "--json");

    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    Entry entry = kept().get(0);
    assertEquals("Harbour, Friday", entry.heading().show());
    assertEquals(When.BEFORE, entry.heading().when());
    assertEquals(Optional.of("vocal"), entry.heading().path());
    assertEquals("within-budget", entry.heading().outcome());
    assertEquals(595, entry.heading().delay().orElseThrow().delay().samples(), 0.05);
    assertEquals(Optional.of("new snake"), entry.note());
    assertEquals("{clock=desk, network=1 ms}", entry.setup().toString());
    assertEquals(run.out().strip(), entry.document());
    assertEquals(Files.readString(chain), entry.chain().orElseThrow().text());
    assertEquals(256, entry.card().orElseThrow().blockSize());
    assertTrue(
        run.err().contains("as " + entry.heading().id().toString().substring(0, 8)), run.err());
  }

  @Test
  void aPathHasANameWithoutAChainToo() throws Exception {
    assertEquals(ExitCode.GOOD, measure(at(595), "--path=vocal").exitCode());
    assertEquals(Optional.of("vocal"), kept().get(0).heading().path());
  }

  @Test
  void aRefusedMeasurementIsPartOfTheRecord() throws Exception {
    Run run = measure(session("java-sound", 256, wires(2).join(1, 1, CARD, 1)));

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode());
    Heading heading = kept().get(0).heading();
    assertEquals("not-trustworthy", heading.outcome());
    assertEquals(Optional.empty(), heading.delay());
  }

  @Test
  void aCorrectionRefersToTheOldEntry() throws Exception {
    measure(at(500));
    String old = kept().get(0).heading().id().toString();
    assertEquals(ExitCode.GOOD, measure(at(595), "--correct=" + old.substring(0, 8)).exitCode());
    assertEquals(old, kept().get(1).heading().corrects().orElseThrow().toString());
    for (String id : List.of("zzz", "")) {
      Run none = measure(at(595), "--correct=" + id);
      assertEquals(ExitCode.JOURNAL, none.exitCode());
      assertTrue(none.err().contains("expected an id or its beginning"), none.err());
    }
  }

  @Test
  void anEntryIsCorrectedOnceAndByTheSamePathAndPartOfTheDay() throws Exception {
    measure(at(500), "--path=vocal");
    String old = kept().get(0).heading().id().toString();
    String correct = "--correct=" + old.substring(0, 8).toUpperCase(Locale.ROOT);
    Run path = measure(at(595), "--path=band", correct);
    assertEquals(ExitCode.JOURNAL, path.exitCode());
    assertTrue(path.err().contains("has the path 'vocal', and its correction 'band'"), path.err());
    Run part = elsewhere("Harbour, Friday", "after", correct);
    assertTrue(part.err().contains("part of the day 'before'"), part.err());
    Run show = elsewhere("Other", "before", correct);
    assertTrue(show.err().contains("has the show 'Harbour, Friday'"), show.err());
    assertEquals(ExitCode.GOOD, measure(at(595), "--path=vocal", correct).exitCode());
    Run twice = measure(at(595), "--path=vocal", correct);
    assertEquals(ExitCode.JOURNAL, twice.exitCode());
    assertTrue(twice.err().contains("was corrected already"), twice.err());
    assertEquals(2, kept().size());
  }

  private Run elsewhere(String show, String when, String correct) {
    String[] args = args("--journal", "--show=" + show, "--when=" + when, "--path=vocal", correct);
    return new LiveBench(folder).run(List.of(backend("java-sound", at(595))), args);
  }

  @Test
  void aCorrectionCountsWhereWhatItCorrectsStood() throws Exception {
    measure(at(500), "--path=vocal");
    measure(at(595), "--path=vocal");
    String first = kept().get(0).heading().id().toString();
    measure(at(501), "--path=vocal", "--correct=" + first);
    Run align = journal("history", "--path=vocal", "--json");
    List<?> points = (List<?>) align.json().get("points");
    assertEquals(List.of(501, 595), points.stream().map(JournalKeepingTest::samples).toList());
  }

  private static int samples(Object point) {
    return Math.round(((Number) ((Map<?, ?>) point).get("delaySamples")).floatValue());
  }

  @Test
  void relabelMovesAnEntryToAnotherPartOfTheDay() throws Exception {
    measure(at(595), "--path=vocal");
    String old = kept().get(0).heading().id().toString();
    Run same = journal("relabel", old, "--when=before");
    same.assertRefused("counts as before the show already");
    Run moved = journal("relabel", old.substring(0, 8), "--when=after");
    assertEquals(ExitCode.GOOD, moved.exitCode(), moved.err());
    assertTrue(moved.out().contains("counts as after the show now"), moved.out());
    Entry now = kept().get(1);
    assertEquals(When.AFTER, now.heading().when());
    assertEquals(kept().get(0).heading().at(), now.heading().at());
    assertEquals(kept().get(0).document(), now.document());
    assertEquals(old, now.heading().corrects().orElseThrow().toString());
    for (String when : List.of("during", "before")) {
      Run again = journal("relabel", old, "--when=" + when);
      assertEquals(ExitCode.JOURNAL, again.exitCode());
      assertTrue(again.err().contains("was corrected already"), again.err());
    }
    assertEquals(ExitCode.GOOD, journal("check").exitCode());
  }

  @Test
  void theDocumentTellsWhereItWasKept() throws Exception {
    Run run = measure(at(595), "--json");
    String id = kept().get(0).heading().id().toString();
    assertEquals(Map.of("id", id, "journal", "journal.db"), run.json().get("kept"));
    assertEquals(null, Run.of("budget", "--json").json().get("kept"));
  }

  /** What was printed is kept afterwards, once, and compared like any other entry. */
  @Test
  void whatCouldNotBeKeptIsAddedLater() throws Exception {
    Path journal = Files.writeString(folder.resolve("journal.db"), "a shopping list ".repeat(99));
    Run failed = measure(at(595), "--path=vocal", "--json");
    assertEquals(ExitCode.JOURNAL, failed.exitCode());
    Map<?, ?> kept = (Map<?, ?>) failed.json().get("kept");
    assertTrue(kept.get("error").toString().contains("is damaged, or no journal"), failed.out());
    assertTrue(failed.err().contains("journal add FILE"), failed.err());
    Files.delete(journal);
    Path printed = Files.writeString(folder.resolve("vocal.json"), failed.out());
    Files.setLastModifiedTime(printed, FileTime.from(Instant.parse("2026-05-01T18:00:00Z")));
    String[] add = {"add", printed.toString(), "--show=Harbour", "--when=before", "--path=vocal"};
    Run added = journal(add);
    assertEquals(ExitCode.GOOD, added.exitCode(), added.err());
    assertTrue(added.out().contains("Dated 2026-05-01 "), added.out());
    Entry entry = kept().get(0);
    assertEquals(Optional.of("vocal"), entry.heading().path());
    assertEquals(595, entry.heading().delay().orElseThrow().delay().samples(), 0.05);
    assertTrue(entry.document().contains("\"id\":\"" + entry.heading().id()), entry.document());
    assertEquals(ExitCode.GOOD, journal("check").exitCode());
    Path again = Files.writeString(folder.resolve("again.json"), entry.document());
    Run twice = journal("add", again.toString(), "--show=Harbour", "--when=before", "--path=vocal");
    assertTrue(twice.out().contains("In the journal already as"), twice.out());
    assertEquals(1, kept().size());
  }

  @Test
  void aDocumentOfAnUnknownCommandIsKeptAndShownByName() throws Exception {
    Path printed =
        Files.writeString(
            folder.resolve("x.json"), "{\"schema\":1,\"command\":\"sonar\",\"outcome\":\"deep\"}");
    Run added = journal("add", printed.toString(), "--show=Harbour", "--when=during");
    assertEquals(ExitCode.GOOD, added.exitCode(), added.err());
    assertTrue(journal("list").out().contains("deep"), journal("list").out());
    assertEquals(ExitCode.GOOD, journal("check").exitCode());
    for (String none : List.of("{}", "{\"command\":\"measure\",\"outcome\":\"error\"}", "[")) {
      Path other = Files.writeString(folder.resolve("none.json"), none);
      journal("add", other.toString(), "--show=Harbour", "--when=during")
          .assertRefused("none.json");
    }
  }

  private Run journal(String... args) {
    String[] all =
        Stream.of(new String[] {"journal"}, args).flatMap(Stream::of).toArray(String[]::new);
    return Run.on(false, "", Map.of("LOOPGAUGE_DATA", folder.toString()), all);
  }

  @Test
  void aRecordingThatCanNotBeKeptDoesNotLoseTheEntry() throws Exception {
    Files.writeString(folder.resolve("journal.db-captures"), "in the way");
    Run run = measure(at(595), "--keep-capture", "--json");
    assertEquals(ExitCode.JOURNAL, run.exitCode());
    assertTrue(run.err().contains("NOT KEPT: the recording"), run.err());
    assertEquals(Optional.empty(), kept().get(0).capture());
    assertEquals(
        kept().get(0).heading().id().toString(), ((Map<?, ?>) run.json().get("kept")).get("id"));
  }

  @Test
  void equalRecordingsAreKeptOnce() throws Exception {
    measure(at(595), "--keep-capture");
    measure(at(595), "--keep-capture");
    assertEquals(kept().get(0).capture(), kept().get(1).capture());
    assertTrue(kept().get(0).capture().orElseThrow().file().matches("[0-9a-f]{64}\\.wav\\.gz"));
    try (var files = Files.list(folder.resolve("journal.db-captures"))) {
      assertEquals(1, files.count());
    }
    assertEquals(ExitCode.GOOD, check().exitCode());
  }

  @Test
  void whatCantBeKeptIsStillPrinted() throws Exception {
    Files.writeString(folder.resolve("journal.db"), "a shopping list ".repeat(100));
    Run run = measure(at(595), "--json");

    assertEquals(ExitCode.JOURNAL, run.exitCode());
    assertEquals("measured", run.json().get("outcome"));
    assertTrue(run.err().contains("NOT KEPT: the journal "), run.err());
    assertTrue(run.err().contains("  try  "), run.err());
  }

  @Test
  void keepsTheCaptureBesideTheJournal() throws Exception {
    measure(at(595), "--keep-capture");
    var capture = kept().get(0).capture().orElseThrow();
    Path packed = folder.resolve("journal.db-captures").resolve(capture.file());
    Path wav = folder.resolve("unpacked.wav");
    try (InputStream in = new GZIPInputStream(Files.newInputStream(packed))) {
      Files.copy(in, wav);
    }
    try (WavFile file = WavFile.open(wav)) {
      assertEquals(2, file.channels());
      assertTrue(file.channel(1).peak() > 0.01, "silence was kept");
    }
  }

  @Test
  void checkFindsARecordingThatWasChanged() throws Exception {
    measure(at(595), "--keep-capture");
    assertEquals(ExitCode.GOOD, check().exitCode());
    Path packed =
        folder.resolve("journal.db-captures").resolve(kept().get(0).capture().orElseThrow().file());
    Files.writeString(packed, "something else");
    Run changed = check();
    assertEquals(ExitCode.JOURNAL, changed.exitCode());
    assertTrue(changed.out().contains("is not what was stored"), changed.out());
    Files.delete(packed);
    assertEquals(1, check().json().get("missingRecordings"));
  }

  private Run check() {
    return Run.on(
        false, "", Map.of("LOOPGAUGE_DATA", folder.toString()), "journal", "check", "--json");
  }

  @Test
  void anotherJournalCanBeNamed() throws Exception {
    Path other = folder.resolve("other.db");
    Run run =
        new LiveBench(folder)
            .run(
                List.of(backend("java-sound", at(595))),
                args("--journal=" + other, "--show=x", "--when=after"));
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertTrue(Files.exists(other));
    assertFalse(Files.exists(folder.resolve("journal.db")));
  }

  @Test
  void analyzeKeepsEachChannel() throws Exception {
    Path wav = folder.resolve("rec.wav");
    Recorded.write(
        wav, Recorded.sweep(0, 1, 1), Recorded.sweep(100, 0.5, 2), Recorded.sweep(300, 0.5, 3));
    Map<String, String> environment = Map.of("LOOPGAUGE_DATA", folder.toString());
    String[] args =
        Stream.of(new String[] {"analyze", "--reference=" + wav, "--return-channel=2,3"}, HARBOUR)
            .flatMap(Stream::of)
            .toArray(String[]::new);
    Run run = Run.on(false, "", environment, args);

    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertEquals(
        List.of(Optional.of("return 2"), Optional.of("return 3")),
        kept().stream().map(entry -> entry.heading().path()).toList());
  }

  @Test
  void refusesHalfOfWhatAnEntryNeeds() {
    Run.of("measure", "--backend=jack", "--show=x").assertRefused("go with --journal");
    Run.of("measure", "--backend=jack", "--journal", "--show=x").assertRefused("needs to know");
    Run.of("analyze", "--journal", "--when=before").assertRefused("needs to know");
    Run.of("analyze", "--journal", "--show=x", "--when=noon").assertRefused("before, during");
  }

  private static ScriptedSession at(int samples) {
    return session("java-sound", 256, wires(2).join(0, 0, CARD + samples, 0.5).join(1, 1, CARD, 1));
  }

  private Run measure(ScriptedSession card, String... more) {
    String[] all = Stream.of(HARBOUR, more).flatMap(Stream::of).toArray(String[]::new);
    return new LiveBench(folder).run(List.of(backend("java-sound", card)), args(all));
  }

  private static String[] args(String... more) {
    String[] args = {
      "measure",
      "--backend=java-sound",
      "--seconds=0.3",
      "--repeat=1",
      "--max-delay=0.1",
      "--send=2",
      "--return=2",
      "--reference-send=1",
      "--reference-return=1",
      "--yes"
    };
    return Stream.of(args, more).flatMap(Stream::of).toArray(String[]::new);
  }

  private List<Entry> kept() throws Exception {
    List<Entry> entries = new ArrayList<>();
    try (Journal journal =
        Journals.openExisting(folder.resolve("journal.db").toString(), Map.of())) {
      journal.each(Selection.ALL, kept -> entries.add(kept.entry()));
    }
    return entries;
  }
}
