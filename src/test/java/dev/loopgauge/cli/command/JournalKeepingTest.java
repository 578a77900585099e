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
import java.util.ArrayList;
import java.util.List;
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
    Run none = measure(at(595), "--correct=zzz");
    assertEquals(ExitCode.JOURNAL, none.exitCode());
    assertTrue(none.err().contains("found 0 whose id starts with zzz"), none.err());
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
