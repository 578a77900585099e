package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportCommandTest {
  @TempDir private Path folder;
  private String document = "";

  @BeforeEach
  void writeDocument() throws IOException {
    document =
        write(
            "wedge.json",
            """
            {"schema":1,"command":"measure","outcome":"measured",
             "measurement":{"sampleRateHz":48000,"delaySamples":96.5,"delayMs":2.010417,
              "uncertaintySamples":0.04,"uncertaintyMs":0.00084,"method":"referenced"},
             "findings":[],"comparison":null}
            """);
  }

  private String write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  private String file(String name) {
    return folder.resolve(name).toString();
  }

  @Test
  void writesAPageToAFile() throws IOException {
    Run run = Run.of("report", "--from", document, "-o", file("page.html"));
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertTrue(run.out().contains("Written to " + file("page.html")), run.out());
    String page = Files.readString(folder.resolve("page.html"));
    assertTrue(page.startsWith("<!DOCTYPE html>"), page);
    assertTrue(page.contains("96.500 ± 0.040"), page);
  }

  @Test
  void overwritesNothing() throws IOException {
    write("page.html", "kept");
    Run.of("report", "--from", document, "-o", file("page.html")).assertRefused("exists already");
    assertEquals("kept", Files.readString(folder.resolve("page.html")));
  }

  @Test
  void printsTextWithoutAFile() {
    Run run = Run.of("report", "--from", document);
    assertTrue(run.out().startsWith("wedge.json: MEASURED: the return is 96.5 samples"), run.out());
  }

  @Test
  void printsOneRowForEachMeasurement() {
    Run run = Run.of("report", "--from", document, document, "--format", "csv");
    List<String> lines = run.out().lines().toList();
    assertEquals(3, lines.size(), run.out());
    assertTrue(
        lines.get(0).startsWith("source,at,show,when,path,outcome,sampleRateHz,delaySamples"));
    assertTrue(
        lines.get(1).startsWith("wedge.json,,,,wedge.json,measured,48000,96.5,2.010417,0.04"),
        run.out());
  }

  @Test
  void printsOneDocument() {
    for (String[] asked :
        new String[][] {
          {"report", "--from", document, "--format", "json"},
          {"report", "--from", document, "--json"}
        }) {
      Map<String, Object> json = Run.of(asked).json();
      assertEquals("report", json.get("command"));
      assertEquals(
          "wedge.json", ((Map<?, ?>) ((List<?>) json.get("readings")).get(0)).get("source"));
    }
  }

  private Run inJournal(String... args) {
    return Run.on(false, "", Map.of("LOOPGAUGE_JOURNAL", file("journal.db")), args);
  }

  /** Measures a simulated path of one stage for the journal. */
  private void measure(String show, String when, String... more) throws IOException {
    if (!Files.exists(folder.resolve("hall.yaml"))) {
      write(
          "hall.yaml",
          """
          chain: Hall
          sample-rate: 48000
          block-size: 64
          stages: { host: { blocks: 2 }, throw: { metres: 3.4 } }
          paths: { vocal: { listener: house, stages: [host, throw] } }
          """);
    }
    List<String> args = new ArrayList<>(List.of("measure", "--backend=simulated", "--yes"));
    args.addAll(List.of("--send=2", "--return=2", "--reference-send=1", "--reference-return=1"));
    args.addAll(List.of("--chain=" + file("hall.yaml"), "--path=vocal", "--seconds=0.3"));
    args.addAll(List.of("--journal", "--show=" + show, "--when=" + when, "--set=clock=desk"));
    args.addAll(List.of(more));
    Run run = inJournal(args.toArray(String[]::new));
    assertTrue(run.exitCode() <= ExitCode.OUTSIDE, run.out() + run.err());
  }

  @Test
  void reportsAShowOfTheJournal() throws IOException {
    measure("Thursday", "after");
    measure("Friday", "before");
    measure("Friday", "after", "--fault=block-size=128", "--note=<b>late</b>");
    Run run = inJournal("report", "--show", "Friday", "-o", file("friday.html"));
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertTrue(run.out().startsWith("vocal: LATE by 128 samples (2.67 ms)"), run.out());
    String page = Files.readString(folder.resolve("friday.html"));
    for (String part :
        List.of(
            "<bdi>Friday</bdi></h1>",
            "From stage to stage",
            "What came back",
            "Changed by +128.",
            "1. Thursday, after, ",
            "Set: clock",
            "&lt;b&gt;late&lt;/b&gt;",
            "throw: { metres: 3.4 }")) {
      assertTrue(page.contains(part), part);
    }
    Run last = inJournal("report", "--format", "csv");
    assertEquals(3, last.out().lines().count(), last.out());
    assertTrue(
        last.out().contains(",Friday,before,vocal,within-budget,48000,127.99999"), last.out());
    inJournal("report", "--show", "Sunday").assertRefused("no show 'Sunday' in the journal");
  }

  @Test
  void leavesOutWhatWasCorrected() throws IOException {
    measure("Friday", "before", "--fault=block-size=128");
    List<?> readings =
        (List<?>) inJournal("report", "--show=Friday", "--json").json().get("readings");
    String id = (String) ((Map<?, ?>) readings.get(0)).get("id");
    measure("Friday", "before", "--correct=" + id);
    Run run = inJournal("report", "--show", "Friday");
    assertTrue(run.out().startsWith("vocal: WITHIN"), run.out());
    assertEquals(2, inJournal("report", "--format=csv").out().lines().count());
  }

  @Test
  void countsARelabelledReadingOnceWhereItBelongs() throws IOException {
    measure("Friday", "before");
    measure("Friday", "after", "--fault=block-size=128");
    List<?> readings =
        (List<?>) inJournal("report", "--show=Friday", "--json").json().get("readings");
    assertEquals(2, readings.size());
    String id = (String) ((Map<?, ?>) readings.get(1)).get("id");
    assertEquals(ExitCode.GOOD, inJournal("journal", "relabel", id, "--when=during").exitCode());
    Run friday = inJournal("report", "--show=Friday", "--json");
    List<?> now = (List<?>) friday.json().get("readings");
    assertEquals(2, now.size(), friday.out());
    assertEquals("during", ((Map<?, ?>) now.get(1)).get("when"), friday.out());
  }

  @Test
  void failsWithoutAJournal() {
    Run run = inJournal("report");
    assertEquals(ExitCode.JOURNAL, run.exitCode(), run.out());
    assertTrue(run.err().contains("there is no journal"), run.err());
  }

  @Test
  void refusesADocumentThatItCannotShow() throws IOException {
    String devices =
        write("devices.json", "{\"schema\":1,\"command\":\"devices\",\"outcome\":\"found\"}");
    Run.of("report", "--from", devices).assertRefused("a document that a report can show");
    Run.of("report", "--from", write("no.json", "no")).assertRefused("expected a JSON document");
    Run.of("report", "--from", file("none.json")).assertRefused("no file");
  }

  @Test
  void refusesAFormatThatIsNone() {
    Run.of("report", "--from", document, "--format", "pdf")
        .assertRefused("expected html, json, csv or text, found 'pdf'");
  }
}
