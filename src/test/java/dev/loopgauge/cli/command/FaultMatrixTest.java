package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.campaign.Campaign;
import dev.loopgauge.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Each fault of the simulated rig on one path of a file of twelve, of eight in each build: a round
 * before, a round after, the comparison, the report, and all exit codes. A clean round names none.
 */
@Tag("campaign")
class FaultMatrixTest {
  private static final String VICTIM = "vocal-5";

  /** All but one are well, and stay so: eight show as much as twelve. */
  private static final int PATHS = Campaign.fullOrSmall(12, 8);

  /**
   * A fault and what must be said of it.
   *
   * @param fault as the option takes it, on the path that is not well
   * @param aspect what the comparison names
   * @param word what its first line says of the path, after the path's name
   * @param roundExit what the round after it ends with
   */
  private record Case(String name, String fault, String aspect, String word, int roundExit) {}

  private static final List<Case> CASES =
      List.of(
          new Case("inverted", "inverted", "polarity", "polarity", 1),
          new Case("-12 dB", "gain=-12", "level", "level", 1),
          new Case("band-limited", "band-limit=200-4000", "response", "response", 1),
          new Case("telephone band", "telephone", "response", "response", 1),
          new Case("high-pass", "high-pass=80:4", "response", "response", 1),
          new Case("low shelf", "low-shelf=200:-6", "response", "response", 1),
          new Case("parametric EQ", "peak=1000:6:2", "response", "response", 1),
          new Case("compressor", "compressor=-40:8", "level", "level", 1),
          new Case("20 ms lost", "dropout=0.5:20", "lost-sound", "lost sound", 1),
          new Case("drift", "drift=50", "clocks", "clocks", 1),
          new Case("drift of 0.1 %", "drift=1000", "clocks", "clocks", 1),
          new Case("second arrival", "second-arrival=2.5:-2", "arrivals", "arrivals", 1),
          new Case("one block more", "extra-block=host-blocks", "delay", "delay", 1),
          new Case("stage bypassed", "absent=eq", "delay", "delay", 1),
          new Case("wrong speed", "wrong-speed=44100", "delay", "no reading", 3),
          new Case("swapped patch", "swapped=vocal-7", "delay", "delay", 1),
          new Case("mute", "silent", "delay", "no reading", 3),
          new Case("noise", "noise=-30", "noise", "noise", 0));

  @TempDir Path folder;
  private Path chain;
  private Path before;

  @BeforeEach
  void goRoundBefore() throws IOException {
    chain = folder.resolve("field.yaml");
    before = folder.resolve("before.db");
    Files.writeString(chain, field());
    Run run = round(before, "before");
    assertEquals(0, run.exitCode(), run.out() + run.err());
  }

  /** Paths, each with a delay of its own by the blocks of its own stage. */
  private static String field() {
    StringBuilder yaml =
        new StringBuilder(
            """
            chain: Orchard Field, harvest concert
            sample-rate: 48000
            block-size: 64
            reference: { send: 1, return: 1 }
            stages:
              box-in:      { samples: 12 }
              desk:        { ms: 0.8 }
              host-blocks: { blocks: 2 }
              eq:          { samples: 40 }
            """);
    List<Integer> paths = IntStream.rangeClosed(1, PATHS).boxed().toList();
    paths.forEach(i -> yaml.append("  out-%d: { samples: %d }%n".formatted(i, 11 + 7 * i)));
    yaml.append("paths:\n");
    paths.forEach(
        i ->
            yaml.append(
                """
                  vocal-%1$d:
                    listener: stream
                    stages: [box-in, desk, host-blocks, eq, out-%1$d]
                    patch: { send: 2, return: %2$d }
                    expect: { polarity: normal, level-db: 0, response-tolerance-db: 3 }
                """
                    .formatted(i, i + 1)));
    return yaml.toString();
  }

  private Run round(Path journal, String when, String... more) {
    List<String> args =
        new ArrayList<>(List.of("round", chain.toString(), "--backend=simulated", "--seconds=0.5"));
    args.addAll(List.of("--max-delay=0.2", "--journal=" + journal, "--show=S", "--when=" + when));
    args.addAll(List.of(more));
    return Run.on(false, "", Map.of(), args.toArray(String[]::new));
  }

  @Test
  void eachFaultIsNamedAndNoneOnACleanRun() throws IOException {
    List<String> table = new ArrayList<>();
    for (Case each : CASES) {
      table.add(row(each));
    }
    Path clean = folder.resolve("clean.db");
    Files.copy(before, clean);
    Run after = round(clean, "after");
    Run compare = compare(clean);
    table.add(
        "%-15s | %d | %d | %s"
            .formatted("none", after.exitCode(), compare.exitCode(), firstLine(compare)));
    System.out.println(String.join("\n", table));
    assertEquals(0, after.exitCode(), after.out());
    assertEquals(0, compare.exitCode(), compare.out());
    assertTrue(
        compare.out().startsWith("%1$d of %1$d paths the same.".formatted(PATHS)), compare.out());
    assertTrue(firstScreen(clean).contains("Nothing changed"), firstScreen(clean));
  }

  private String row(Case each) throws IOException {
    Path journal = folder.resolve(each.aspect() + each.roundExit() + ".db");
    Files.copy(before, journal, StandardCopyOption.REPLACE_EXISTING);
    Run after = round(journal, "after", "--fault=" + VICTIM + ":" + each.fault());
    assertEquals(each.roundExit(), after.exitCode(), each + after.out() + after.err());
    if (each.roundExit() != 0) {
      assertTrue(firstLine(after).contains(VICTIM), each + after.out());
    }
    Run compare = compare(journal);
    assertEquals(1, compare.exitCode(), each + compare.out());
    assertTrue(wordsOf(firstLine(compare)).contains(each.word()), each + compare.out());
    List<?> changed = (List<?>) path(journal).get("changedAspects");
    assertTrue(changed.contains(each.aspect()), each + compare.out());
    String changes = firstScreen(journal).split("Changed from before to after", -1)[2];
    assertTrue(changes.startsWith(" " + VICTIM), changes);
    assertTrue(changes.contains(" " + each.aspect().replace('-', ' ') + ": "), changes);
    return "%-15s | %d | %d | %s"
        .formatted(each.name(), after.exitCode(), compare.exitCode(), firstLine(compare));
  }

  private Run compare(Path journal, String... more) {
    List<String> args =
        new ArrayList<>(List.of("journal", "compare", "--journal=" + journal, "--show=S"));
    args.addAll(List.of(more));
    return Run.on(false, "", Map.of(), args.toArray(String[]::new));
  }

  /** The words of the report's first section. */
  private String firstScreen(Path journal) throws IOException {
    Path page = folder.resolve("report.html");
    Files.deleteIfExists(page);
    Run run = Run.of("report", "--journal=" + journal, "--show=S", "--out=" + page);
    assertEquals(0, run.exitCode(), run.err());
    String html = Files.readString(page);
    int from = html.indexOf("id=\"verdict\"");
    return html.substring(from, html.indexOf("</section>", from))
        .replaceAll("<[^>]*>", " ")
        .replaceAll("\\s+", " ");
  }

  private Map<?, ?> path(Path journal) {
    List<?> paths = (List<?>) compare(journal, "--json").json().get("paths");
    return paths.stream()
        .map(path -> (Map<?, ?>) path)
        .filter(path -> VICTIM.equals(path.get("path")))
        .findFirst()
        .orElseThrow();
  }

  /** What the first line of a comparison says that the victim changed in. */
  private static List<String> wordsOf(String line) {
    Matcher named = Pattern.compile(" CHANGED: .*" + VICTIM + " \\(([^)]*)\\)").matcher(line);
    assertTrue(named.find(), line);
    return List.of(named.group(1).split(", ", -1));
  }

  private static String firstLine(Run run) {
    return run.out().lines().findFirst().orElse("");
  }
}
