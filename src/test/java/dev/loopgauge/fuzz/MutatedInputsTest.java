package dev.loopgauge.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A short slice of fuzzing in each build, by seeds: whole inputs with bytes changed, lost, doubled
 * or cut off. {@code -Dloopgauge.mutations=N} runs N times as many. What a fuzzer found is kept
 * among the resources, in a folder for each target.
 */
class MutatedInputsTest {
  private static final int TIMES = Integer.getInteger("loopgauge.mutations", 1);
  private static final long SEED = 20_261_129;

  @TempDir private Path folder;

  /** Recordings and chain files have tests of their own, by what their formats are made of. */
  @ParameterizedTest
  @CsvSource({
    "wav, 500",
    "chain, 300",
    "csv, 200",
    "json, 200",
    "documents, 1000",
    "series, 1000",
    "profiles, 300",
    "calibrations, 300",
    "arguments, 60",
    "journal, 20",
    "commands, 30"
  })
  void aMutatedInputIsReadOrRefused(String name, int runs) throws Exception {
    Target target = Targets.of(name, folder);
    List<byte[]> seeds = target.seeds();
    for (byte[] whole : seeds) {
      target.check(whole);
    }
    for (long seed = SEED; seed < SEED + (long) runs * TIMES; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      byte[] input = new Mutation(random).of(seeds.get(random.nextInt(seeds.size())));
      try {
        target.check(input);
      } catch (Exception | AssertionError | StackOverflowError e) {
        throw new AssertionError(name + ", seed " + seed + ": " + e, e);
      }
    }
  }

  @Test
  void whatWasFoundStaysMended() throws Exception {
    Path found = Path.of(MutatedInputsTest.class.getResource("found").toURI());
    int checked = 0;
    for (String name : Targets.NAMES) {
      Target target = Targets.of(name, folder);
      for (Path input : inputs(found.resolve(name))) {
        target.check(Files.readAllBytes(input));
        checked++;
      }
    }
    try (Stream<Path> all = Files.walk(found)) {
      assertTrue(checked == all.filter(Files::isRegularFile).count(), checked + " checked");
    }
  }

  private static List<Path> inputs(Path folder) throws Exception {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }
}
