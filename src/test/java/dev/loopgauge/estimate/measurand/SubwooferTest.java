package dev.loopgauge.estimate.measurand;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.filter.Design;
import dev.loopgauge.signal.filter.Designs;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What comes back from 30 to 90 Hz alone shows in few values, which must be enough. */
class SubwooferTest {
  private static final int DELAY = 300;

  private static Design subwoofer() {
    return Designs.all().stream()
        .filter(design -> design.toString().contains("highHz=90"))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void sweepsAndSequencesAreReadAlike() {
    DelayEstimator estimator = new DelayEstimator(0.1);
    List<Measurement> all = new ArrayList<>();
    int seed = 0;
    for (double level : new double[] {60, 30}) {
      for (FilteredTrial.Kind kind :
          List.of(FilteredTrial.Kind.SWEEP, FilteredTrial.Kind.WHITE, FilteredTrial.Kind.MLS)) {
        FilteredTrial trial =
            new FilteredTrial(
                Optional.of(subwoofer().at(Designs.RATE)), kind, DELAY, level, seed++);
        Estimate estimate = estimator.estimate(List.of(trial.reading()));
        all.add(
            assertInstanceOf(Estimate.Found.class, estimate, () -> trial + ": " + estimate)
                .measurement());
      }
    }
    for (Measurement one : all) {
      for (Measurement other : all) {
        double apart = Math.abs(one.delay().samples() - other.delay().samples());
        assertTrue(
            apart < one.uncertaintySamples() + other.uncertaintySamples(),
            () -> one.delay() + " and " + other.delay());
      }
    }
  }
}
