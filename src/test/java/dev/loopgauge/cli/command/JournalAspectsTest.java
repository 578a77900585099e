package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A path of the simulated rig, measured before the show clean and after it with a fault. */
@Tag("campaign")
class JournalAspectsTest {
  private static final String CHAIN =
      """
      chain: Hall
      sample-rate: 48000
      block-size: 64
      stages:
        desk: { samples: 118 }
        host-blocks: { blocks: 2 }
      paths:
        vocal: { listener: house, stages: [desk, host-blocks] }
        drums: { listener: house, stages: [desk] }
      """;

  @TempDir private Path folder;
  private String chain = "";

  @BeforeEach
  void writeTheChainFile() throws Exception {
    chain = Files.writeString(folder.resolve("hall.yaml"), CHAIN).toString();
  }

  private Run run(String... args) {
    return Run.on(false, "", Map.of("LOOPGAUGE_JOURNAL", folder.resolve("j.db").toString()), args);
  }

  private void measure(String path, String when, String... more) {
    List<String> args =
        new ArrayList<>(List.of("measure", "--backend=simulated", "--yes", "--seconds=0.5"));
    args.addAll(List.of("--send=2", "--return=2", "--reference-send=1", "--reference-return=1"));
    args.addAll(List.of("--chain=" + chain, "--path=" + path, "--journal", "--show=Night"));
    args.add("--when=" + when);
    args.addAll(List.of(more));
    run(args.toArray(String[]::new));
  }

  private List<?> changedAspects() {
    List<?> paths =
        (List<?>) run("journal", "compare", "--show=Night", "--json").json().get("paths");
    return (List<?>) ((Map<?, ?>) paths.get(0)).get("changedAspects");
  }

  private static String flat(Run run) {
    return run.out().replaceAll("\\s+", " ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "inverted              | polarity        | inverted since: was polarity reversed",
        "gain=-12              | level           | 12.0 dB quieter: was a gain, pad or fader moved?",
        "band-limit=200-4000   | level, response | against the other octaves",
        "dropout=0.4:20        | lost-sound      | ms of sound are missing at 0.40 s",
        "drift=50              | delay, clocks   | because the clocks ran apart",
        "second-arrival=2.5:-6 | arrivals        | another arrival 2.50 ms later",
        "noise=-30             | noise           | dB less between sound and noise",
        "silent                | delay           | nothing heard any more: is the path muted",
        "clip=-6               | delay, clipping | samples are clipped: too few others",
        "block-size=128        | delay           | CHANGED +128.00"
      })
  void compareNamesTheFaultThatCame(String fault, String aspects, String told) {
    measure("vocal", "before");
    measure("vocal", "after", "--fault=" + fault);
    Run run = run("journal", "compare", "--show=Night");
    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.err());
    assertTrue(run.out().startsWith("0 of 1 path the same, 1 CHANGED: vocal ("), run.out());
    assertTrue(flat(run).contains(told), run.out());
    run.out().lines().forEach(line -> assertTrue(line.length() <= 80, line));
    assertEquals("[" + aspects + "]", changedAspects().toString());
  }

  @Test
  void aCleanPairIsTheSameWithoutAChangedAspect() {
    measure("vocal", "before");
    measure("vocal", "after");
    Run run = run("journal", "compare", "--show=Night");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertTrue(run.out().startsWith("1 of 1 path the same.\n"), run.out());
    assertEquals(List.of(), changedAspects());
    assertTrue(flat(run("report", "--show=Night")).contains("samples against before, the same"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "inverted       | bad  | NOT GOOD | NOT GOOD (polarity), delay within budget",
        "block-size=128 | bad  | outside  | NOT GOOD, delay outside budget",
        "noise=-60      | good | within   | GOOD, delay within budget"
      })
  void listAndShowTellTheVerdictOverEverything(
      String fault, String standing, String listed, String shown) {
    measure("vocal", "before", "--fault=" + fault);
    List<?> entries = (List<?>) run("journal", "list", "--json").json().get("entries");
    Map<?, ?> entry = (Map<?, ?>) entries.get(0);
    assertEquals(standing, entry.get("standing"));
    Run list = run("journal", "list");
    assertTrue(list.out().lines().toList().get(1).contains("  " + listed + "  "), list.out());
    list.out().lines().forEach(line -> assertTrue(line.length() <= 80, line));
    Run show = run("journal", "show", (String) entry.get("id"));
    assertTrue(show.out().startsWith("Night, before, vocal: " + shown + "\n"), show.out());
  }

  @Test
  void aDriftIsNoPatchError() {
    measure("vocal", "before");
    measure("vocal", "after", "--fault=drift=50");
    Run run = run("journal", "compare", "--show=Night");
    assertTrue(run.out().lines().noneMatch(line -> line.startsWith("    likely")), run.out());
  }

  @Test
  void theHeadlineCountsWhatWasNotMeasured() {
    measure("vocal", "before");
    measure("drums", "before");
    measure("vocal", "after");
    Run run = run("journal", "compare", "--show=Night");
    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.err());
    assertTrue(run.out().startsWith("1 of 2 paths the same, 1 not measured after.\n"), run.out());
  }

  @Test
  void historyMarksWhatElseChanged() {
    measure("vocal", "before");
    measure("vocal", "during", "--fault=inverted");
    measure("vocal", "after", "--fault=inverted");
    List<?> points =
        (List<?>) run("journal", "history", "--path=vocal", "--json").json().get("points");
    assertEquals(
        "[null, [polarity], []]",
        points.stream()
            .map(point -> String.valueOf(((Map<?, ?>) point).get("changedAspects")))
            .toList()
            .toString());
    Run run = run("journal", "history", "--path=vocal");
    assertEquals(1, run.out().lines().filter(line -> line.endsWith("  polarity")).count());
  }

  @Test
  void theReportTellsWhatElseChanged() throws Exception {
    measure("vocal", "before");
    measure("vocal", "after", "--fault=inverted");
    Path page = folder.resolve("page.html");
    Run run = run("report", "--show=Night", "-o", page.toString());
    assertTrue(flat(run("report", "--show=Night")).contains("against before, CHANGED"), run.out());
    String html = Files.readString(page);
    assertTrue(html.contains("inverted since: was polarity reversed"), run.out());
    assertTrue(html.contains("Changed from before to after: "), run.out());
  }
}
