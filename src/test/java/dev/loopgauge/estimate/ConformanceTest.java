package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.campaign.Campaign;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The estimator against theory: errors against the Cramer-Rao bound, and the share of errors that
 * the claimed uncertainty covers, for each stimulus, rate and level of white noise. The table goes
 * to target/conformance.md. The profile {@code conformance} runs it in full.
 */
@Tag("campaign")
class ConformanceTest {
  private static final boolean FULL = Campaign.fullOrSmall(1, 0) == 1;
  private static final int TRIALS = Campaign.fullOrSmall(100, 8);
  private static final Campaign CAMPAIGN = Campaign.named("conformance");
  private static final Path TABLE = Path.of("target", "conformance.md");
  private static final int[] RATES = {44_100, 48_000, 88_200, 96_000, 192_000};
  private static final double[] LEVELS = {-10, 0, 20, 40, 60};
  private static final double[] FEW_LEVELS = {-10, 20, 60};
  private static final double[] DEEP_LEVELS = {-25, -20};

  @Test
  void errsNoMoreThanTheoryAllowsAndSaysHowMuch() throws IOException {
    Files.createDirectories(TABLE.getParent());
    Files.writeString(TABLE, "Seeds: " + CAMPAIGN.label() + "\n\n" + Tally.tableHead());
    Map<String, Tally> pools = new TreeMap<>();
    Map<String, Tally.Promise> promises = new TreeMap<>();
    List<String> broken = new ArrayList<>();
    for (ConformanceCell cell : cells()) {
      Optional<Tally> run = cell.run();
      if (run.isEmpty()) {
        continue;
      }
      write(run.get(), cell.promise(), broken);
      for (String pool : cell.pools()) {
        pools.merge(pool, new Tally(pool).plus(run.get()), Tally::plus);
        promises.merge(pool, cell.promise(), Tally.Promise::and);
      }
    }
    for (Map.Entry<String, Tally> pool : pools.entrySet()) {
      write(pool.getValue(), promises.get(pool.getKey()), broken);
    }
    assertEquals(List.of(), broken);
    CAMPAIGN.assumeWhole();
  }

  /** Row by row, so that a run of an hour that is stopped leaves what it has seen. */
  private static void write(Tally tally, Tally.Promise promise, List<String> broken)
      throws IOException {
    Files.writeString(TABLE, tally.toString(), StandardOpenOption.APPEND);
    tally.broken(promise).ifPresent(what -> broken.add(tally + what));
  }

  private static List<ConformanceCell> cells() {
    List<ConformanceCell> cells = new ArrayList<>();
    for (int rate : RATES) {
      boolean all = FULL || rate == 48_000;
      for (double level : all ? LEVELS : FEW_LEVELS) {
        for (String kind : List.of("click", "sweep", "mls")) {
          cells.add(new ConformanceCell(CAMPAIGN, kind, rate, level, 0.25, TRIALS));
        }
      }
      for (double level : all ? LEVELS : new double[] {20}) {
        cells.add(new ConformanceCell(CAMPAIGN, ConformanceCell.SPEECH, rate, level, 1, TRIALS));
        cells.add(new ConformanceCell(CAMPAIGN, ConformanceCell.MUSIC, rate, level, 1, TRIALS));
      }
      for (double level : all ? DEEP_LEVELS : new double[0]) {
        for (String kind : List.of("click", "sweep", "mls")) {
          cells.add(new ConformanceCell(CAMPAIGN, kind, rate, level, 1, TRIALS));
        }
      }
    }
    return cells;
  }

  /** Ninety-nine times in a hundred the right peak is the strongest, 30 dB below the noise. */
  @Test
  void findsTheRightPeakOfOneSecondSweepDeepInNoise() {
    ConformanceCell cell = new ConformanceCell(CAMPAIGN, "sweep", 48_000, -30, 1, FULL ? 3000 : 50);
    int least =
        new BinomialDistribution(null, cell.trials(), 0.99).inverseCumulativeProbability(1e-4);
    OptionalInt right = cell.detected();
    Assumptions.assumeTrue(right.isPresent(), "waits for another run");
    String told = right.getAsInt() + " of " + cell.trials() + " found, expected " + least;
    assertTrue(right.getAsInt() >= least, told);
  }
}
