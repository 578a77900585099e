package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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

class SeriesCommandTest {
  /** Common practice, no source: what one rig read at 48 kHz. */
  private static final String READINGS =
      """
      block-size,delay-ms,cpu-percent,dropouts
      32,5.9,88,3
      64,7.2,61,0
      128,9.9,44,0
      2048,89.9,20,0
      """;

  private static final String CHAIN =
      """
      sample-rate: 48000
      block-size: 64
      stages:
        box: { samples: 150, tolerance-samples: 1 }
        host: { blocks: 2 }
      paths:
        vocal: { listener: house, stages: [box, host] }
      """;

  @TempDir private Path folder;
  private String readings = "";
  private String chain = "";

  @BeforeEach
  void writeFiles() throws IOException {
    readings = write("rig.csv", READINGS);
    chain = write("chain.yaml", CHAIN);
  }

  private String write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  private static Map<?, ?> section(Run run, String key) {
    return (Map<?, ?>) run.json().get(key);
  }

  private static double number(Map<?, ?> section, String key) {
    return ((Number) section.get(key)).doubleValue();
  }

  /** Two blocks and 219 samples, twice told with one decimal: those two don't pull the others. */
  @Test
  void fewDigitsCountForLessThanMany() throws IOException {
    String csv = "64,7.2291667\n128,9.8958333\n256,15.2\n512,25.8958333\n1024,47.2\n";
    String file = write("mixed.csv", "block-size,delay-ms\n" + csv);
    Run run = Run.of("series", file, "--sample-rate=48000", "--json");
    Map<?, ?> fit = (Map<?, ?>) run.json().get("fit");
    assertEquals(219, ((Number) fit.get("fixedSamples")).doubleValue(), 0.1, run.out());
  }

  /** At 44.1 kHz two blocks at 48 kHz look like 1.8375. */
  @Test
  void noPartOfABlockIsWrittenToAFile() throws IOException {
    String csv = "64,7.2291667\n128,9.8958333\n512,25.8958333\n";
    String file = write("rate.csv", "block-size,delay-ms\n" + csv);
    Path out = folder.resolve("rate.yaml");
    Run.of("series", file, "--sample-rate=44100", "--out", out.toString())
        .assertRefused("a whole number of blocks to write, found 1.83");
    assertFalse(Files.exists(out));
  }

  @Test
  void takesTheHostApart() {
    Run run = Run.of("series", readings, "--sample-rate=48000", "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertEquals("fitted", run.json().get("outcome"));
    Map<?, ?> fit = section(run, "fit");
    assertEquals(
        List.of(
            "blocks",
            "roundedBlocks",
            "fixedSamples",
            "fixedMs",
            "residualSamples",
            "uncertaintyBlocks"),
        List.copyOf(fit.keySet()));
    assertEquals(2, number(fit, "blocks"), 0.01);
    assertEquals(2, fit.get("roundedBlocks"));
    assertEquals(4.56, number(fit, "fixedMs"), 0.01);
    assertTrue(number(fit, "uncertaintyBlocks") > 0, run.out());
    assertEquals(4, ((List<?>) run.json().get("readings")).size());
    assertEquals(13, ((List<?>) run.json().get("predictions")).size());
    assertEquals(64, section(run, "smallestClean").get("blockSize"));
  }

  @Test
  void saysItInWords() {
    Run run = Run.of("series", readings, "--sample-rate=48000");
    assertTrue(
        run.out().startsWith("2 blocks plus 218.8 samples (4.56 ms), at 48 kHz."), run.out());
    assertTrue(run.out().contains("64 is the smallest block that ran clean"), run.out());
    assertTrue(run.out().contains("host-blocks: { blocks: 2 }"), run.out());
  }

  @Test
  void aSpoiledReadingStandsOut() throws IOException {
    write("rig.csv", READINGS.replace("9.9,", "19.9,") + "512,25.9,30,0\n");
    Run run = Run.of("series", readings, "--sample-rate=48000", "--json");
    Map<?, ?> odd = (Map<?, ?>) ((List<?>) run.json().get("readings")).get(2);
    assertEquals(true, odd.get("outlier"));
    assertEquals(2, section(run, "fit").get("roundedBlocks"));
    assertTrue(Run.of("series", readings, "--sample-rate=48000").out().contains("ODD: left out"));
  }

  @Test
  void whatTheChainFileDoesNotStateIsNamed() {
    Run run = Run.of("series", readings, "--chain", chain, "--path=vocal", "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    Map<?, ?> split = section(run, "split");
    assertEquals(150, number(split, "statedSamples"));
    assertEquals(2, number(split, "statedBlocks"));
    assertEquals(68.8, number(split, "unstatedSamples"), 0.01);
    Run text = Run.of("series", readings, "--chain", chain, "--path=vocal");
    assertTrue(text.out().contains("besides its blocks: 68.8 samples (1.43"), text.out());
  }

  @Test
  void theChainFileItWritesPredictsTheReadings() {
    String target = folder.resolve("host.yaml").toString();
    Run run = Run.of("series", readings, "--sample-rate=48000", "--out", target);
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    Run budget = Run.of("budget", target, "--block-size=128", "--json");
    assertEquals(ExitCode.GOOD, budget.exitCode(), budget.out());
    Map<?, ?> path = (Map<?, ?>) ((List<?>) budget.json().get("paths")).get(0);
    assertEquals(9.9, number(path, "delayMs"), 0.05);
    Run again = Run.of("series", readings, "--sample-rate=48000", "--out", target);
    assertEquals(ExitCode.USAGE, again.exitCode());
    assertTrue(again.err().contains("nothing is overwritten"), again.err());
  }

  @Test
  void stagesThatCannotBeAreNotWritten() throws IOException {
    write("rig.csv", "block-size,delay-ms\n64,1\n128,9\n256,25\n");
    String target = folder.resolve("host.yaml").toString();
    Run run = Run.of("series", readings, "--sample-rate=48000", "--out", target);
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertFalse(Files.exists(Path.of(target)));
    assertEquals(ExitCode.GOOD, Run.of("series", readings, "--sample-rate=48000").exitCode());
  }

  @Test
  void theRateMustBeKnownAndOnlyOne() {
    Run none = Run.of("series", readings, "--json");
    assertEquals(ExitCode.USAGE, none.exitCode());
    assertEquals("expected --sample-rate, found none", none.error("text"));
    Run two =
        Run.of(
            "series", readings, "--sample-rate=44100", "--chain", chain, "--path=vocal", "--json");
    assertEquals(ExitCode.USAGE, two.exitCode());
  }

  @Test
  void aBadTableIsRefusedByLine() throws IOException {
    write("rig.csv", "block-size,delay-ms\n64,7.2\n128,late\n");
    Run run = Run.of("series", readings, "--sample-rate=48000", "--json");
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals("unusable-series", run.error("code"));
    assertTrue(run.error("text").toString().startsWith("rig.csv:3: expected"), run.out());
    Run missing = Run.of("series", "nowhere.csv", "--sample-rate=48000");
    assertEquals(ExitCode.USAGE, missing.exitCode());
  }
}
