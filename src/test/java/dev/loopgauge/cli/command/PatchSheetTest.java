package dev.loopgauge.cli.command;

import static dev.loopgauge.cli.command.LiveBench.CARD;
import static dev.loopgauge.cli.command.LiveBench.backend;
import static dev.loopgauge.cli.command.LiveBench.session;
import static dev.loopgauge.cli.command.LiveBench.wires;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.ScriptedBackend;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.report.kind.Documents;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The patch sheet of a chain file, printed and ticked off. */
@Tag("campaign")
class PatchSheetTest {
  private static final String CHAIN =
      """
      chain: Brook Hall
      sample-rate: 48000
      block-size: 64
      reference: { send: 1, return: 1 }
      stages:
        desk: { samples: 30 }
        blocks: { blocks: 2 }
        box: { samples: 64 }
      paths:
        ears: { listener: in-ear, stages: [desk], patch: { send: 2, return: 2 } }
        house: { listener: house, stages: [desk, blocks], patch: { send: 2, return: 4 } }
        stream: { listener: stream, stages: [desk, box], patch: { send: 3, return: 3 } }
        wedge: { listener: wedge, stages: [box] }
      """;

  @TempDir Path folder;
  private LiveBench bench;

  @BeforeEach
  void open() throws IOException {
    bench = new LiveBench(folder.resolve("data"));
    write(CHAIN);
  }

  @Test
  void isPrintedWithABoxInEachLineWhereNobodyListens() {
    Run run = bench.run(List.of(), "patch", chain());

    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals(
        """
        PATCH SHEET of Brook Hall: 3 paths.
               path       heard by  send  return  against
          [ ]  reference               1       1
          [ ]  ears       in-ear       2       2        1
          [ ]  house      house        2       4        1
          [ ]  stream     stream       3       3        1
          no patch     wedge
          next         --profile or --backend ticks it off with quiet ticks
        """,
        run.out());
  }

  @Test
  void isTickedOffByWhatIsHeard() {
    Run run = patch();

    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals(
        """
        PATCHED: 3 paths are as the sheet says.
               path       heard by  send  return  against
          [x]  reference               1       1           0.0 dB
          [x]  ears       in-ear       2       2        1  0.0 dB
          [x]  house      house        2       4        1  0.0 dB
          [x]  stream     stream       3       3        1  0.0 dB
          no patch     wedge
        """,
        run.out());
    assertTrue(run.err().startsWith("PATCH SHEET of Brook Hall: 3 paths.\n"), run.err());
  }

  @Test
  void aDocumentHoldsTheSheet() {
    Map<String, Object> json = patch("--json").json();

    assertEquals("patched", json.get("outcome"));
    assertEquals("Brook Hall", json.get("chain"));
    assertEquals(List.of("wedge"), json.get("withoutPatch"));
    assertEquals(
        Map.of(
            "path",
            "ears",
            "listener",
            "in-ear",
            "send",
            2,
            "return",
            2,
            "reference",
            Map.of("send", 1, "return", 1),
            "standing",
            "patched"),
        ((List<?>) json.get("sheet")).get(0));
    assertEquals(3, ((List<?>) json.get("sends")).size());
    assertFalse(json.containsKey("troubles"), json.toString());
    assertEquals(patch().out(), Documents.read(json).orElseThrow().text());
  }

  @Test
  void aCrossedPairIsNamedWithTheReturnsToSwap() {
    Run run = patch("--fault", "ears:swapped=stream");

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out());
    assertTrue(
        run.out().startsWith("NOT PATCHED: sends 2 and 3 are crossed: swap returns 2 and 3.\n"),
        run.out());
    assertTrue(
        run.out().contains("[!]  ears       in-ear       2       2        1  on return 3, 4\n"),
        run.out());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "stream:silent | return 3 doesn't hear send 3 | not-heard",
        "stream:crosstalk=ears:0 | return 3 hears more than one send: 2, 3 | two-sends",
        "stream:crosstalk=ears:-20 | return 3 hears more than one send: 2, 3 | two-sends",
        "ears:swapped=stream | sends 2 and 3 are crossed: swap returns 2 and 3 | elsewhere",
      })
  void whatCanNotMeasureEndsWithThree(String fault, String trouble, String standing) {
    Run run = patch("--fault", fault, "--json");

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out());
    assertEquals("not-patched", run.json().get("outcome"));
    Map<?, ?> first = (Map<?, ?>) ((List<?>) run.json().get("troubles")).get(0);
    assertEquals(trouble, first.get("text"), run.out());
    Map<?, ?> stream = (Map<?, ?>) ((List<?>) run.json().get("sheet")).get(2);
    assertEquals(standing, stream.get("standing"), run.out());
  }

  @Test
  void nothingHeardEndsWithThree() {
    Run run = patch("--fault", "silent");

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out());
    assertTrue(run.out().startsWith("NOT PATCHED: return 2 doesn't hear send 2"), run.out());
    assertTrue(run.out().contains("  [x]  reference "), run.out());
    assertTrue(run.out().contains("  not heard\n"), run.out());
  }

  @Test
  void twoPathsOnOneReturnAreRefusedByTheSheetItself() throws IOException {
    write(CHAIN.replace("send: 3, return: 3", "send: 3, return: 2"));

    Run sheet = bench.run(List.of(), "patch", chain());
    assertEquals(ExitCode.NOT_TRUSTWORTHY, sheet.exitCode(), sheet.out());
    assertTrue(
        sheet.out().startsWith("NOT PATCHED: return 2 is for more than one: ears, stream."),
        sheet.out());
    Run ticked = patch();
    assertEquals(ExitCode.NOT_TRUSTWORTHY, ticked.exitCode(), ticked.out());
    assertTrue(ticked.out().contains("return 2 hears more than one send: 2, 3"), ticked.out());
  }

  @Test
  void aMissingReferenceEndsWithThreeUnlessTheCommandNamesOne() throws IOException {
    write(CHAIN.replace("reference: { send: 1, return: 1 }\n", ""));

    Run run = patch();
    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out());
    assertTrue(
        run.out().startsWith("NOT PATCHED: no reference to measure ears, house, stream against"),
        run.out());
    Run named = patch("--reference-send", "1", "--reference-return", "1");
    assertEquals(ExitCode.GOOD, named.exitCode(), named.out());
  }

  @Test
  void aReferenceThatNobodyHearsEndsWithThree() {
    Run run = patch("--reference-send", "1", "--reference-return", "3");

    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out());
    assertTrue(run.out().contains("return 3 doesn't hear send 1"), run.out());
  }

  @Test
  void aPathMayBeMeasuredAgainstAnotherPathsReturn() throws IOException {
    write(CHAIN.replace("send: 2, return: 4", "send: 2, return: 4, against: 2"));

    Run run = patch();
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertTrue(
        run.out().contains("[x]  house      house        2       4        2  0.0"), run.out());
  }

  @Test
  void manySendsAreTickedSomeAtATime() throws IOException {
    StringBuilder paths = new StringBuilder(CHAIN.substring(0, CHAIN.indexOf("  ears:")));
    for (int channel = 2; channel <= 19; channel++) {
      paths.append(
          "  p%1$d: { listener: house, stages: [desk], patch: { send: %1$d, return: %1$d } }\n"
              .formatted(channel));
    }
    write(paths.toString());

    Run run = patch("--fault", "p4:swapped=p17", "--max-delay", "0.1", "--json");
    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.err());
    List<?> troubles = (List<?>) run.json().get("troubles");
    assertEquals(1, troubles.size(), troubles.toString());
    assertTrue(troubles.toString().contains("swap returns 4 and 17"), troubles.toString());
    assertEquals(19, ((List<?>) run.json().get("sends")).size());
  }

  @Test
  void sendAndReturnAreForOnePath() {
    Run run = patch("--send", "2");

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertTrue(run.err().startsWith("--send and --return are for one path"), run.err());
  }

  @Test
  void aFileWithoutAPatchHasNoSheet() throws IOException {
    write(CHAIN.replaceAll(", patch: \\{[^}]*\\}", ""));

    assertEquals(ExitCode.USAGE, patch().exitCode());
  }

  /** The scripted card has two sends and four returns. */
  @Test
  void aRealCardIsAskedForOnceAndTickedQuietly() throws IOException {
    write(CHAIN.replaceAll("(?m)^  stream:.*\\n", ""));
    ScriptedBackend card =
        backend(
            "jack",
            session(
                "jack",
                256,
                wires(4).join(0, 0, CARD, 1).join(1, 1, CARD, 1).join(1, 3, CARD, 0.5)));
    Run run = bench.typed("\n", card, "patch", chain(), "--backend", "jack", "--max-delay", "0.1");

    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertEquals(List.of(1, 2), card.requests().get(0).sends());
    assertTrue(run.err().contains("play in turn a short tick at -30 dBFS."), run.err());
    assertTrue(
        run.out().contains("[x]  house      house        2       4        1  -6.0 dB"), run.out());
  }

  private void write(String yaml) throws IOException {
    Files.writeString(folder.resolve("brook.yaml"), yaml);
  }

  private String chain() {
    return folder.resolve("brook.yaml").toString();
  }

  private Run patch(String... more) {
    String[] rig = {"patch", chain(), "--backend", "simulated"};
    return bench.run(List.of(), Stream.of(rig, more).flatMap(Stream::of).toArray(String[]::new));
  }
}
