package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AlignCommandTest {
  private static final String CHAIN =
      """
      chain: Harbour Field
      sample-rate: 48000
      stages:
        desk: { ms: 2 }
        system: { samples: 144 }
      paths:
        main: { listener: house, stages: [desk, system] }
        fill: { listener: house, stages: [desk] }
        stream: { listener: stream, stages: [desk] }
      mixes:
        front: [main, fill]
      """;

  private static final String BLOCK = "block-size: 64\nstages:\n";

  private static final String MEASURED =
      """
      { "schema": 1, "command": "measure", "outcome": "outside-budget",
        "measurement": { "sampleRateHz": 96000, "delaySamples": 580.5 },
        "findings": [], "comparison": { "path": "main" } }
      """;

  @TempDir private Path folder;
  private String chain = "";

  @BeforeEach
  void writeChain() throws IOException {
    chain = write("chain.yaml", CHAIN);
  }

  private String write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  private static Map<?, ?> path(Run run, int index) {
    Map<?, ?> mix = (Map<?, ?>) ((List<?>) run.json().get("mixes")).get(0);
    return (Map<?, ?>) ((List<?>) mix.get("paths")).get(index);
  }

  @Test
  void addsTheDelayThatMakesAllMeet() {
    Run run = Run.of("align", chain, "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertEquals(144, path(run, 1).get("addSamples"));
    assertEquals(3, path(run, 1).get("addMs"));
    assertEquals("predicted", path(run, 1).get("source"));
  }

  /** 580.5 samples at 96 kHz are 290.25 at 48 kHz, so the fill waits 290.25 - 96 = 194.25. */
  @Test
  void measuredDocumentReplacesThePrediction() throws IOException {
    Run run = Run.of("align", chain, "--measured", write("main.json", MEASURED), "--json");
    assertEquals(194, path(run, 1).get("addSamples"));
    assertEquals("measured", path(run, 0).get("source"));
    assertEquals("predicted", path(run, 1).get("source"));
  }

  /** The host left at 128 instead of 64: two blocks make the main 128 samples later. */
  @Test
  void whatMeasurePrintsIsTakenAsItIs() throws IOException {
    String blocks = CHAIN.replace("samples: 144", "blocks: 2").replaceFirst("stages:\n", BLOCK);
    String rig = write("rig.yaml", blocks);
    String[] measure = {
      "measure",
      "--backend",
      "simulated",
      "--chain",
      rig,
      "--path",
      "main",
      "--json",
      "--fault",
      "block-size=128"
    };
    Run measured = new LiveBench(folder.resolve("data")).run(List.of(), measure);
    assertEquals(ExitCode.OUTSIDE, measured.exitCode(), measured.err());
    Run run = Run.of("align", rig, "--measured", write("main.json", measured.out()), "--json");
    assertEquals(256, path(run, 1).get("addSamples"));
    assertEquals("measured", path(run, 0).get("source"));
  }

  @Test
  void csvIsWrittenAndNothingIsOverwritten() throws IOException {
    Path csv = folder.resolve("front.csv");
    Run run = Run.of("align", chain, "--out", csv.toString());
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertTrue(run.out().contains("front.csv"), run.out());
    String written = Files.readString(csv);
    assertTrue(written.contains("front,fill,predicted,96,2,0,144,3,"), written);
    Run again = Run.of("align", chain, "--step=1ms", "--out", csv.toString());
    again.assertRefused("exists already");
    assertEquals(written, Files.readString(csv));
    Run nowhere = Run.of("align", chain, "--out", folder.resolve("no/where.csv").toString());
    assertEquals(ExitCode.USAGE, nowhere.exitCode());
  }

  @Test
  void conflictIsToldAndExitsOutside() throws IOException {
    String two = write("two.yaml", CHAIN + "  booth: [fill, stream]\n");
    Run run = Run.of("align", two);
    assertEquals(ExitCode.OUTSIDE, run.exitCode());
    assertTrue(run.out().startsWith("CONFLICT: fill needs 144 samples"), run.out());
  }

  @Test
  void aPathThatIsLaterThanTheTargetIsRefused() {
    Run.of("align", chain, "--to=fill")
        .assertRefused("main arrives 3.000 ms (144.0 samples) too late");
    assertEquals(ExitCode.GOOD, Run.of("align", chain, "--to=main").exitCode());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--to=mian                | 'main'",
        "--to=stream              | in none",
        "--step=0.1               | 0.1ms",
        "--step=-1ms              | 0.1ms",
        "--measured=nowhere.json  | no file"
      })
  void wrongArgumentsAreRefused(String wrong, String told) {
    Run.of("align", chain, wrong).assertRefused(told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "outside-budget        | undecided      | a settled measurement",
        "outside-budget        | not-trustworthy | a settled measurement",
        "\"comparison\"        | \"else\"       | the name of a path",
        "\"main\"              | \"mian\"       | 'main'",
        "\"measurement\":      | \"else\":      | a 'measurement'",
        "580.5                 | null           | 'delaySamples'",
        "580.5                 | \"580.5\"      | 'delaySamples'",
        "96000                 | 96             | 8000",
        "{ \"schema\"          | \"schema\"     | something else"
      })
  void documentsThatHoldNoMeasurementOfAPathAreRefused(String good, String bad, String told)
      throws IOException {
    assertTrue(MEASURED.contains(good));
    String file = write("main.json", MEASURED.replace(good, bad));
    Run.of("align", chain, "--measured", file).assertRefused(told);
  }

  @Test
  void twoMeasurementsOfOnePathAreRefused() throws IOException {
    String file = write("main.json", MEASURED);
    Run.of("align", chain, "--measured", file, "--measured", file)
        .assertRefused("two measurements of path main");
  }

  @Test
  void mixesAreNeededAndTheirPathsMustExist() throws IOException {
    String none = write("none.yaml", CHAIN.substring(0, CHAIN.indexOf("mixes:")));
    assertTrue(Run.of("align", none).err().contains("expected mixes"));
    Run unknown = Run.of("align", write("odd.yaml", CHAIN.replace("[main, fill]", "[main, fil]")));
    unknown.assertRefused("'fill'");
  }
}
