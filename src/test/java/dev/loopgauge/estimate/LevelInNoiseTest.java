package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.campaign.Campaign;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The level of an arrival in white noise, by the signal-to-noise ratio of each sample. */
@Tag("campaign")
class LevelInNoiseTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final double LEVEL_DB = -20;
  private static final int TRIALS = Campaign.fullOrSmall(400, 30);
  private static final double CHANCE = 1e-4;
  private static final Campaign CAMPAIGN = Campaign.named("level-in-noise");
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.05);

  /** Few of the faintest are told at all: those that noise raised. */
  @ParameterizedTest
  @CsvSource({
    "click, -24", "click, -22", "click, -20", "click, -10", "click, 20",
    "sweep, -24", "sweep, -22", "sweep, -20", "sweep, -10", "sweep, 20"
  })
  void isCoveredAndNotBiased(String kind, double snrDb) {
    Optional<List<String>> run = CAMPAIGN.slice(kind + ", " + snrDb, () -> tried(kind, snrDb));
    Assumptions.assumeTrue(run.isPresent(), "waits for another run");
    int told = Integer.parseInt(run.get().get(0));
    int inside = Integer.parseInt(run.get().get(1));
    int above = Integer.parseInt(run.get().get(2));
    String row =
        String.format(
            Locale.ROOT,
            "| %s, %+.0f dB | %d of %d | %d | %d | %s dB |",
            kind,
            snrDb,
            told,
            TRIALS,
            inside,
            above,
            run.get().get(3));
    System.out.println(row);
    int least = new BinomialDistribution(null, told, 0.94).inverseCumulativeProbability(CHANCE);
    assertTrue(told == 0 || inside >= least, row);
    BinomialDistribution half = new BinomialDistribution(null, told, 0.5);
    assertTrue(told == 0 || above >= half.inverseCumulativeProbability(CHANCE), row);
    assertTrue(told == 0 || above <= half.inverseCumulativeProbability(1 - CHANCE), row);
  }

  /** How many were told, lie inside their uncertainty, lie above the level; the mean error. */
  private static List<String> tried(String kind, double snrDb) {
    DelayTrial trial =
        new DelayTrial(
            DelayTrial.asConvertersPass(
                StimulusKind.valueOf(kind.toUpperCase(Locale.ROOT)).of(0.25).render(RATE)));
    double gain = Math.pow(10, LEVEL_DB / 20);
    int told = 0;
    int inside = 0;
    int above = 0;
    double sum = 0;
    for (int i = 0; i < TRIALS; i++) {
      SplittableRandom random =
          new SplittableRandom(
              CAMPAIGN.seed(1_000_003L * kind.hashCode() + 10_000L * (long) snrDb + i));
      double delay = 500 + 1000 * random.nextDouble();
      Estimate estimate =
          ESTIMATOR.estimate(List.of(trial.reading(delay, gain, trial.noise(snrDb, gain), random)));
      if (estimate instanceof Estimate.Found found) {
        Measurement m = found.measurement();
        double off = m.levelDb() - LEVEL_DB;
        told++;
        inside += Math.abs(off) <= m.levelUncertaintyDb() ? 1 : 0;
        above += off > 0 ? 1 : 0;
        sum += off;
      }
    }
    String mean = String.format(Locale.ROOT, "%+.2f", told == 0 ? 0 : sum / told);
    return List.of("" + told, "" + inside, "" + above, mean);
  }
}
