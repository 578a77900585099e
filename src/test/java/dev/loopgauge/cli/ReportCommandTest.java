package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
    assertTrue(page.contains("96.50 ± 0.04"), page);
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
    assertTrue(run.out().startsWith("wedge.json: Measured: the return is 96.5 samples"), run.out());
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

  @Test
  void asksWhatToReport() {
    Run.of("report").assertRefused("expected what to report");
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
