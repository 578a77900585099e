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

class PlanCommandTest {
  private static final String CHAIN =
      """
      chain: Quay Stage
      sample-rate: 48000
      block-size: 64
      stages:
        desk: { ms: 1 }
        host: { blocks: 2 }
      paths:
        house: { listener: house, stages: [desk, host] }
        singer: { listener: in-ear, stages: [desk, host] }
        stream: { listener: stream, stages: [desk, host], picture: screen }
      pictures:
        screen: { frame-rate: 60000/1001, frames: 3 }
      """;

  /** Three blocks and 96 samples at 48 kHz, with sound that dropped out at 64. */
  private static final String SERIES =
      """
      { "schema": 1, "command": "series", "outcome": "fitted",
        "fit": { "blocks": 3, "roundedBlocks": 3, "fixedSamples": 96, "fixedMs": 2 },
        "readings": [ { "blockSize": 64, "delayMs": 6, "dropouts": 2, "cpuPercent": 91 },
                      { "blockSize": 128, "delayMs": 10 } ],
        "predictions": [ { "blockSize": 64, "delaySamples": 288, "delayMs": 6 },
                         { "blockSize": 128, "delaySamples": 480, "delayMs": 10 } ] }
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

  private static Map<?, ?> choice(Run run, int index) {
    return (Map<?, ?>) ((List<?>) run.json().get("choices")).get(index);
  }

  /** The house is 48 + 2 x block samples of 720 at 48 kHz, 96 + 2 x block of 1440 at 96 kHz. */
  @Test
  void largestBlockThatKeepsEveryListenerWithinLimitsComesFirst() {
    Run run = Run.of("plan", chain, "--sample-rates=48000,96000", "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertEquals(512, choice(run, 0).get("blockSize"));
    assertEquals(96_000, choice(run, 0).get("sampleRateHz"));
    assertEquals(List.of("singer"), choice(run, 0).get("beforeHost"));
    assertEquals("house", ((Map<?, ?>) run.json().get("limit")).get("path"));
  }

  @Test
  void onlyWhatIsAskedAboutIsPlanned() {
    Run run = Run.of("plan", chain, "--block-sizes=64,96", "--sample-rates=48000", "--json");
    assertEquals(2, ((List<?>) run.json().get("choices")).size());
    Run kept = Run.of("plan", chain, "--sample-rates=48000", "--keep-in-host=singer", "--json");
    assertEquals(96, choice(kept, 0).get("blockSize"));
    assertEquals(List.of(), choice(kept, 0).get("beforeHost"));
    Run left = Run.of("plan", chain, "--may-leave-host=house", "--json");
    assertEquals(List.of("house", "singer"), choice(left, 0).get("beforeHost"));
  }

  @Test
  void emptyPlanExitsOutsideAndSaysWhy() {
    Run run = Run.of("plan", chain, "--block-sizes=2048", "--sample-rates=48000");
    assertEquals(ExitCode.OUTSIDE, run.exitCode());
    assertTrue(run.out().startsWith("NOTHING FITS"), run.out());
    assertTrue(run.out().contains("house would be 86.3 ms late, 71.4 ms over"), run.out());
    assertTrue(run.out().contains("--may-leave-host house"), run.out());
  }

  @Test
  void anotherSampleRateIsNeverTheOnlyAdvice() {
    Run own = Run.of("plan", chain);
    assertTrue(own.out().startsWith("CHOOSE block 256 at 48 kHz"), own.out());
    Run run = Run.of("plan", chain, "--sample-rates=48000,96000");
    assertTrue(run.out().startsWith("CHOOSE block 512 at 96 kHz"), run.out());
    assertTrue(run.out().contains("block 256 at 48 kHz is the best that leaves"), run.out());
    assertTrue(run.out().lines().allMatch(line -> line.length() <= 80), run.out());
  }

  /** By its fit the house is 96 + 3 x block samples at 48 kHz: 192 is 14 ms, 256 is 18. */
  @Test
  void measuredFitReplacesThePrediction() throws IOException {
    String series = write("series.json", SERIES);
    Run run = Run.of("plan", chain, "--sample-rates=48000", "--fit", "house=" + series, "--json");
    assertEquals(192, choice(run, 0).get("blockSize"));
    assertTrue(run.out().contains("\"source\" : \"measured\""), run.out());
    assertEquals(
        List.of(Map.of("blockSize", 64, "sampleRateHz", 48_000)), run.json().get("droppedOut"));
  }

  @Test
  void fitNeedsNoPathWhereOnlyOneEntersTheHost() throws IOException {
    String series = write("series.json", SERIES);
    String one = write("one.yaml", CHAIN.replaceAll("  (singer|stream): .*\n", ""));
    Run run = Run.of("plan", one, "--sample-rates=48000", "--fit", series, "--json");
    assertEquals(192, choice(run, 0).get("blockSize"));
    Run open = Run.of("plan", chain, "--fit", series);
    open.assertRefused("house, singer, stream");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--rule=r37               | ebu-r37",
        "--block-sizes=0           | from 1",
        "--block-sizes=1000000     | 65536",
        "--sample-rates=1          | 8000",
        "--keep-in-host=singr     | 'singer'",
        "--may-leave-host=huose   | 'house'",
        "--fit=house=nowhere.json | no file"
      })
  void wrongArgumentsAreRefused(String wrong, String told) {
    Run.of("plan", chain, wrong).assertRefused(told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "no JSON                         | something else",
        "{ \"schema\": 1 }               | a 'fit'",
        "{ \"fit\": {} }                 | 'predictions'",
        "{ \"fit\": { \"blocks\": -1, \"fixedSamples\": 0 }, \"predictions\": [ { \"delaySamples\": 48, \"delayMs\": 1 } ] } | can be",
        "{ \"fit\": {}, \"predictions\": [ { \"delaySamples\": 48, \"delayMs\": 1 } ] } | 'blocks'",
        "{ \"fit\": {}, \"predictions\": [ { \"delaySamples\": 48, \"delayMs\": 0 } ] } | sample rate"
      })
  void whatIsNoSeriesIsRefused(String text, String told) throws IOException {
    Run.of("plan", chain, "--fit", "house=" + write("series.json", text)).assertRefused(told);
  }

  @Test
  void seriesThatWasSplitForAPathNamesItItself() throws IOException {
    String named = SERIES.replace("\"fit\":", "\"split\": { \"path\": \"stream\" }, \"fit\":");
    Run run = Run.of("plan", chain, "--sample-rates=48000", "--fit", write("series.json", named));
    assertTrue(run.out().contains("measured     stream"), run.out());
  }

  /**
   * Common practice, no source: a rig that reads 47.2 ms at a block of 1024 and 89.9 ms at 2048
   * meets three frames at 59.94, 50.05 ms, best at 1024 with 2.8 ms added.
   */
  @Test
  void whatSeriesPrintsIsTakenAsItIs() throws IOException {
    String readings =
        write(
            "rig.csv",
            "block-size,delay-ms,dropouts\n32,5.9,4\n64,7.2,0\n128,9.9,0\n1024,47.2,0\n2048,89.9,0\n");
    Run series = Run.of("series", readings, "--sample-rate=48000", "--json");
    assertEquals(ExitCode.GOOD, series.exitCode(), series.err());
    String fit = "stream=" + write("fit.json", series.out());
    String wide = "listeners: { house: { limit-ms: 500 }, in-ear: { limit-ms: 500 } }\n";
    String forgiving = write("wide.yaml", CHAIN + wide);
    Run run = Run.of("plan", forgiving, "--sample-rates=48000", "--fit", fit, "--json");
    Map<?, ?> stream = (Map<?, ?>) ((List<?>) choice(run, 0).get("paths")).get(2);
    assertEquals("measured", stream.get("source"));
    Map<?, ?> closest = (Map<?, ?>) ((Map<?, ?>) stream.get("picture")).get("closestBlock");
    assertEquals(1024, closest.get("blockSize"));
    assertEquals(2.8, ((Number) closest.get("soundEarlyMs")).doubleValue(), 0.1);
    assertEquals(
        List.of(Map.of("blockSize", 32, "sampleRateHz", 48_000)), run.json().get("droppedOut"));
  }

  @Test
  void whereOnlyDropoutsStandInTheWayNoLimitIsBlamed() throws IOException {
    String dropping =
        SERIES
            .replace("\"dropouts\": 2", "\"dropouts\": 0")
            .replace("\"delayMs\": 10 }", "\"delayMs\": 10, \"dropouts\": 1 }");
    Run run =
        Run.of(
            "plan",
            chain,
            "--sample-rates=48000",
            "--block-sizes=64,128",
            "--fit",
            "house=" + write("series.json", dropping));
    assertTrue(run.out().startsWith("CHOOSE block 64 at 48 kHz"), run.out());
    assertTrue(run.out().contains("no limit breaks, but sound dropped out there"), run.out());
    assertTrue(run.out().contains("left out     block 128 at 48 kHz"), run.out());
  }

  @Test
  void twoFitsOfOnePathAreRefused() throws IOException {
    String fit = "house=" + write("series.json", SERIES);
    Run.of("plan", chain, "--fit", fit, "--fit", fit).assertRefused("two fits of path house");
  }

  @Test
  void rigWithoutBlocksHasNothingToPlan() throws IOException {
    Run.of("plan", write("no.yaml", CHAIN.replace("blocks: 2", "samples: 128")))
        .assertRefused("stated in blocks");
  }
}
