package dev.loopgauge.report.html;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Twelve paths of an invented festival field, measured before and after by the program itself. */
public record TwelvePaths(Path folder) {
  /** The show that they are kept under. */
  public static final String SHOW = "Orchard Field, Friday";

  private static final String STAGES =
      """
      chain: Orchard Field, harvest concert
      sample-rate: 48000
      block-size: 64
      reference: { send: 1, return: 1 }
      stages:
        box-in:      { samples: 24, tolerance-samples: 1, note: converter data sheet }
        box-out:     { samples: 21, note: converter data sheet }
        desk:        { ms: 0.8, tolerance-ms: 0.05 }
        host-blocks: { blocks: 2 }
        host-fixed:  { samples: 83 }
        limiter:     { samples: 64, reported-by: host }
        network:     { packets: 1, packet-time-us: 1000 }
        radio:       { ms: 0.6 }
        lift:        { samples: 40 }
        wedge-air:   { metres: 1.8 }
        side-air:    { metres: 3.2 }
        pa-air:      { metres: 14 }
      paths:
      """;

  private static final List<List<String>> PATHS =
      List.of(
          List.of("lead-in-ear", "in-ear", "box-in, desk, network, box-out, radio"),
          List.of("guitar-in-ear", "in-ear", "box-in, desk, network, box-out"),
          List.of("keys-in-ear", "in-ear", "box-in, desk, box-out, radio"),
          List.of("drums-in-ear", "in-ear", "box-in, desk, host-blocks, box-out"),
          List.of("lead-wedge", "wedge", "box-in, desk, host-blocks, box-out, wedge-air"),
          List.of("drum-fill", "wedge", "box-in, desk, box-out, lift, side-air"),
          List.of("lead-house", "house", "box-in, desk, host-fixed, limiter, box-out, pa-air"),
          List.of("choir-house", "house", "box-in, desk, host-blocks, network, box-out, pa-air"),
          List.of("front-fill", "house", "box-in, desk, host-blocks, box-out, lift, side-air"),
          List.of("balcony", "house", "box-in, desk, host-fixed, network, box-out, pa-air"),
          List.of("stream-mix", "stream", "box-in, desk, host-blocks, host-fixed, network"),
          List.of("truck-mix", "stream", "box-in, desk, limiter, network"));

  /** The chain file. */
  private String chain() {
    StringBuilder yaml = new StringBuilder(STAGES);
    for (int i = 0; i < PATHS.size(); i++) {
      List<String> path = PATHS.get(i);
      yaml.append(
          """
            %s:
              listener: %s
              stages: [%s]
              patch: { send: 2, return: %d }
              expect: { polarity: normal, level-db: 0, response-tolerance-db: 3 }
          """
              .formatted(path.get(0), path.get(1), path.get(2), i + 2));
    }
    try {
      return Files.writeString(folder.resolve("orchard.yaml"), yaml).toString();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Measures all twelve. */
  public Run round(String when, String... more) {
    List<String> args =
        new ArrayList<>(List.of("round", chain(), "--backend=simulated", "--seconds=0.5"));
    args.addAll(List.of("--max-delay=0.2", "--journal", "--show=" + SHOW, "--when=" + when));
    args.addAll(List.of(more));
    return run(args.toArray(String[]::new));
  }

  /** Runs the program with a journal of this folder. */
  public Run run(String... args) {
    return Run.on(
        false, "", Map.of("LOOPGAUGE_JOURNAL", folder.resolve("journal.db").toString()), args);
  }

  /** The report's file. */
  public Path page(String name, String... more) {
    Path page = folder.resolve(name);
    List<String> args = new ArrayList<>(List.of("report", "--show=" + SHOW, "-o", page.toString()));
    args.addAll(List.of(more));
    Run run = run(args.toArray(String[]::new));
    assertTrue(Files.exists(page), run.out() + run.err());
    return page;
  }
}
