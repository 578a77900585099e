package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.jr.ob.JSON;
import dev.loopgauge.capture.simulated.Pace;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.SchemaCheck;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.wiring.Adapters;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WatchCommandTest {
  private static final String CHAIN =
      """
      chain: Harbour Theatre
      sample-rate: 8000
      block-size: 64
      reference: { send: 1, return: 1 }
      stages:
        box:    { samples: 12 }
        blocks: { blocks: 2 }
      paths:
        house: { listener: house, stages: [box, blocks], patch: { send: 2, return: 2 } }
        ears:  { listener: in-ear, stages: [box], patch: { send: 2, return: 3 } }
        loose: { listener: stream, stages: [box] }
      """;

  @TempDir Path folder;
  private Path chain;

  @BeforeEach
  void writeChain() throws Exception {
    chain = Files.writeString(folder.resolve("harbour.yaml"), CHAIN);
  }

  private Run watch(boolean terminal, String... more) {
    List<String> args =
        new ArrayList<>(
            List.of("watch", chain.toString(), "--backend=simulated", "--sample-rate=8000"));
    args.addAll(Arrays.asList(more));
    return Run.on(
        terminal,
        "",
        Map.of("LOOPGAUGE_DATA", folder.toString()),
        Adapters.of(List::of, Pace.UNBOUND),
        args.toArray(String[]::new));
  }

  @Test
  void endsWellWhereNothingMoved() {
    Run run = watch(false, "--for=12s");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out() + run.err());
    assertTrue(run.out().contains("GOOD: in 0:00:12.0 nothing moved."), run.out());
    assertTrue(run.out().contains("140.00 → 140.00 samples, nothing moved"), run.out());
    assertTrue(run.err().contains("Plays nothing."), run.err());
    assertTrue(run.err().contains("Not watched, no patch or reference: loose."), run.err());
  }

  @Test
  void printsADocumentALineThatKeepsToItsSchema() throws Exception {
    Run run = watch(false, "--for=30s", "--json", "--fault=house:block-size=128@12");
    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.err());
    List<Map<String, Object>> steps = new ArrayList<>();
    String last = "";
    for (String line : run.out().lines().toList()) {
      Map<String, Object> document = JSON.std.mapFrom(line);
      assertEquals(List.of(), SchemaCheck.wrong(line), line);
      last = (String) document.get("event");
      if (last.equals("step")) {
        steps.add(document);
      }
    }
    assertEquals("summary", last);
    assertEquals(1, steps.size(), run.out());
    assertEquals("house", steps.get(0).get("path"));
    assertEquals("starts", steps.get(0).get("phase"));
    assertEquals(12, ((Number) steps.get(0).get("atSeconds")).doubleValue(), 0.5);
    Map<?, ?> step = (Map<?, ?>) steps.get(0).get("step");
    assertEquals(128, ((Number) step.get("changeSamples")).doubleValue(), 0.05);
    assertEquals(2, ((Map<?, ?>) ((List<?>) step.get("blocks")).get(0)).get("blocks"));
    Map<?, ?> cause = (Map<?, ?>) ((List<?>) steps.get(0).get("causes")).get(0);
    assertEquals("block-size", cause.get("cause"));
  }

  @Test
  void keepsEventsAsDuringTheShow() {
    String journal = "--journal=" + folder.resolve("show.db");
    Run run = watch(false, "--for=30s", "--fault=ears:inverted@12", journal, "--show=Friday");
    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out() + run.err());
    Map<String, Object> listed = Run.of("journal", "list", journal, "--json").json();
    List<?> entries = (List<?>) listed.get("entries");
    assertEquals(1, entries.size(), listed::toString);
    Map<?, ?> entry = (Map<?, ?>) entries.get(0);
    assertEquals("during", entry.get("when"));
    assertEquals("ears", entry.get("path"));
    assertEquals("bad", entry.get("standing"));
    assertEquals(ExitCode.GOOD, Run.of("journal", "check", journal).exitCode());
  }

  @Test
  void neverShowsAnOldDelayAsACurrentOne() {
    Run run = watch(true, "--for=30s", "--fault=ears:silent@10", "--color=never");
    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out());
    String screen = run.out().substring(run.out().lastIndexOf("\u001b[J"));
    String row = screen.lines().filter(line -> line.startsWith("  ears")).findFirst().orElseThrow();
    // Lost from 10 s to the end at 30 s; a busy machine leaves windows out on either side.
    assertTrue(row.matches("  ears +- +SOUND LOST, last read (1[5-9]|2[0-9]) s ago"), row);
    run.out().lines().forEach(line -> assertTrue(line.length() <= 86, line));
  }

  /** One path that nobody could tell leaves no trustworthy watch, though the other was read. */
  @Test
  void isNotTrustworthyWhereAPathIsNeverRead() {
    Run run = watch(false, "--for=12s", "--fault=ears:silent");
    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out());
    assertTrue(run.out().contains("UNDECIDED: in 0:00:12.0 nothing moved, 1 of 2"), run.out());
    assertTrue(run.out().contains("never read, in "), run.out());
  }

  /** A fader that is moved is told as that; nothing expected another level. */
  @Test
  void tellsAFaderAsAFader() throws Exception {
    Run run = watch(false, "--for=30s", "--json", "--fault=ears:gain=-6@12");
    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out() + run.err());
    List<String> events = run.out().lines().filter(line -> line.contains("\"phase\"")).toList();
    assertEquals(1, events.size(), events::toString);
    Map<String, Object> event = JSON.std.mapFrom(events.get(0));
    assertEquals("level", event.get("event"));
    assertEquals("not-judged", ((Map<?, ?>) event.get("verdict")).get("standing"));
    assertEquals(-6, ((Number) event.get("changeDb")).doubleValue(), 0.1);
  }

  @Test
  void printsADocumentALineWhereverJsonIsAskedFor() {
    List<String> args =
        List.of("--json", "watch", chain.toString(), "--backend=simulated", "--for=soon");
    Run run = Run.of(args.toArray(String[]::new));
    assertEquals(ExitCode.USAGE, run.exitCode(), run.out());
    assertEquals(1, run.out().lines().count(), run.out());
  }

  @Test
  void saysWhatIsMissing() throws Exception {
    watch(false, "--for=1s", "--window=99").assertRefused("a window must be 0.5 to 30");
    watch(false, "--for=1s", "--show=S").assertRefused("go with --journal");
    Files.writeString(chain, CHAIN.replace("reference:", "# reference:"));
    watch(false, "--for=1s").assertRefused("no path says both");
  }
}
