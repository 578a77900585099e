package dev.loopgauge.estimate.measurand;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.estimate.result.PureDelay;
import dev.loopgauge.signal.filter.AllPass;
import dev.loopgauge.signal.filter.Crossover;
import dev.loopgauge.signal.filter.Design;
import dev.loopgauge.signal.filter.Designs;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * One path has one delay, whatever it is measured with. In small here; the profile {@code
 * conformance} tries 50 seeds.
 */
@Tag("campaign")
class OnePathOneDelayTest {
  private static final int SEEDS = Boolean.getBoolean("loopgauge.full") ? 50 : 1;
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.1);

  /** What the trials of one kind came to. */
  private static final class Count {
    private int trials;
    private int found;
    private int pure;
    private int inside;
    private final List<String> wrongPolarity = new ArrayList<>();
    private int pairs;
    private int overlapping;
  }

  private static Optional<Measurement> measured(FilteredTrial trial) {
    Estimate estimate = ESTIMATOR.estimate(List.of(trial.reading()));
    return estimate instanceof Estimate.Found found
        ? Optional.of(found.measurement())
        : Optional.empty();
  }

  private static boolean inside(PureDelay pure, double delay) {
    return Math.abs(pure.samples() - delay) <= pure.uncertaintySamples();
  }

  private static boolean overlap(Measurement one, Measurement other) {
    double apart = Math.abs(one.delay().samples() - other.delay().samples());
    return apart <= one.uncertaintySamples() + other.uncertaintySamples();
  }

  private static void run(Design design, double decibels, int seed, Count count) {
    List<Measurement> all = new ArrayList<>();
    for (FilteredTrial.Kind kind : FilteredTrial.Kind.values()) {
      int delay = 300 + 7 * seed;
      FilteredTrial trial =
          new FilteredTrial(
              Optional.of(design.at(Designs.RATE)),
              kind,
              delay,
              decibels,
              seed + 31L * design.hashCode());
      count.trials++;
      Optional<Measurement> measured = measured(trial);
      measured.ifPresent(all::add);
      measured.flatMap(Measurement::pure).ifPresent(p -> count(p, delay, count));
      count.found += measured.isPresent() ? 1 : 0;
      boolean inverted = measured.filter(m -> m.polarity() == Polarity.INVERTED).isPresent();
      if (inverted && !turnsThePhase(design)) {
        count.wrongPolarity.add(design + ", " + kind + ", " + decibels + " dB: " + measured);
      }
    }
    for (int i = 0; i < all.size(); i++) {
      for (int j = 0; j < i; j++) {
        count.pairs++;
        count.overlapping += overlap(all.get(i), all.get(j)) ? 1 : 0;
      }
    }
  }

  /** An all-pass of the first order inverts what lies above it; its polarity is open. */
  private static boolean turnsThePhase(Design design) {
    return design instanceof AllPass
        || (design instanceof Crossover crossover && crossover.output() == Crossover.Output.SUM);
  }

  private static void count(PureDelay pure, double delay, Count count) {
    count.pure++;
    count.inside += inside(pure, delay) ? 1 : 0;
  }

  @Test
  void holdsForFiltersOfEveryKind() {
    Count count = new Count();
    for (Design design : Designs.all()) {
      for (double decibels : new double[] {60, 30}) {
        for (int seed = 0; seed < SEEDS; seed++) {
          run(design, decibels, seed, count);
        }
      }
    }
    System.out.printf(
        "%d trials, %d found, %d with a pure delay, %d of them cover it, %d of %d pairs overlap%n",
        count.trials, count.found, count.pure, count.inside, count.overlapping, count.pairs);
    assertEquals(List.of(), count.wrongPolarity);
    assertTrue(count.inside >= 0.94 * count.pure, count.inside + " of " + count.pure);
    assertTrue(count.overlapping >= 0.97 * count.pairs, count.overlapping + " of " + count.pairs);
  }
}
