package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is written to a file isn't printed too; without the file it is. */
class WrittenFilesTest {
  private static final String CHAIN =
      """
      chain: Hall
      sample-rate: 48000
      block-size: 64
      stages:
        host: { blocks: 2 }
        driver: { samples: 219 }
      paths:
        vocal: { listener: house, stages: [host, driver] }
        fill: { listener: house, stages: [driver] }
      mixes:
        front: [vocal, fill]
      """;

  @TempDir private Path folder;
  private String chain = "";

  @BeforeEach
  void writeChain() throws IOException {
    chain = Files.writeString(folder.resolve("hall.yaml"), CHAIN).toString();
  }

  @Test
  void theDelaysOfAnAlignment() throws IOException {
    assertPrintedOnlyWithoutAFile("align", chain);
  }

  @Test
  void theStagesOfASeries() throws IOException {
    String readings =
        Files.writeString(
                folder.resolve("rig.csv"), "block-size,delay-samples\n64,347\n128,475\n256,731\n")
            .toString();
    assertPrintedOnlyWithoutAFile("series", readings, "--sample-rate=48000");
  }

  @Test
  void theStagesOfALiveSeries() throws IOException {
    assertPrintedOnlyWithoutAFile(
        "series",
        "--live",
        "--backend=simulated",
        "--chain=" + chain,
        "--path=vocal",
        "--block-sizes=64,256,1024",
        "--seconds=0.2",
        "--repeat=1");
  }

  @Test
  void theEntriesOfAnExport() throws IOException {
    Run kept =
        run(
            "measure",
            "--backend=simulated",
            "--chain=" + chain,
            "--path=vocal",
            "--seconds=0.2",
            "--repeat=1",
            "--journal",
            "--show=Friday",
            "--when=before");
    assertEquals(ExitCode.GOOD, kept.exitCode(), kept.err());
    assertPrintedOnlyWithoutAFile("journal", "export", "--format=csv");
  }

  private void assertPrintedOnlyWithoutAFile(String... args) throws IOException {
    Path file = folder.resolve("written.out");
    Run printed = run(args);
    String[] more = Arrays.copyOf(args, args.length + 2);
    more[args.length] = "-o";
    more[args.length + 1] = file.toString();
    Run written = run(more);
    assertEquals(ExitCode.GOOD, written.exitCode(), written.err());
    assertTrue(holdsALineOf(file, printed.out()), printed.out());
    assertFalse(holdsALineOf(file, written.out()), written.out());
    assertTrue(written.out().contains("written.out"), written.out());
  }

  private Run run(String... args) {
    return Run.on(true, "", Map.of("LOOPGAUGE_DATA", folder.toString()), args);
  }

  /** Whether a printed line has all words of a line of the file, or four of them. */
  private static boolean holdsALineOf(Path file, String printed) throws IOException {
    List<Set<String>> told = printed.lines().map(WrittenFilesTest::words).toList();
    return Files.readString(file)
        .lines()
        .map(WrittenFilesTest::words)
        .filter(words -> words.size() > 1)
        .anyMatch(words -> told.stream().anyMatch(line -> shares(line, words)));
  }

  private static boolean shares(Set<String> line, Set<String> words) {
    return words.stream().filter(line::contains).count() >= Math.min(4, words.size());
  }

  private static Set<String> words(String line) {
    Set<String> words = new LinkedHashSet<>(List.of(line.split("[^\\w.]+")));
    words.remove("");
    return words;
  }
}
