package dev.loopgauge.estimate.measurand;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.signal.filter.Design;
import dev.loopgauge.signal.filter.Designs;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;

/** What returns through filters, and through none, are read as. */
public final class FilteredOutcomes {
  private static final double[] LEVELS = {60, 30, 10};
  private static final int DELAY = 300;

  private FilteredOutcomes() {}

  /**
   * Reads each stimulus through each filter once, at one level or another.
   *
   * @param seed the first of the seeds
   * @param each gets a trial's name and what it was read as
   */
  public static void read(long seed, BiConsumer<String, Read> each) {
    DelayEstimator estimator = new DelayEstimator(0.1);
    List<Optional<Design>> paths = new ArrayList<>(List.of(Optional.empty(), Optional.empty()));
    Designs.all().forEach(design -> paths.add(Optional.of(design)));
    int trial = 0;
    for (Optional<Design> path : paths) {
      for (FilteredTrial.Kind kind : FilteredTrial.Kind.made()) {
        double level = LEVELS[(int) ((seed + trial) % LEVELS.length)];
        FilteredTrial filtered =
            new FilteredTrial(
                path.map(d -> d.at(Designs.RATE)), kind, DELAY + trial, level, seed + trial);
        Estimate estimate = estimator.estimate(List.of(filtered.reading()));
        String name = path.map(Design::toString).orElse("flat") + ", " + kind + ", " + level;
        each.accept(name, new Read(estimate, DELAY + trial));
        trial++;
      }
    }
  }

  /**
   * What a trial was read as.
   *
   * @param delay the pure delay that it had
   */
  public record Read(Estimate estimate, double delay) {
    /** An interval is left by one in twenty, and by a quarter of its width more by one in 80. */
    private static final double SURELY_OFF = 1.25;

    /** Whether a pure delay was told that isn't the path's. */
    public boolean isWrong() {
      return estimate instanceof Estimate.Found found
          && found
              .measurement()
              .pure()
              .filter(p -> Math.abs(p.samples() - delay) > SURELY_OFF * p.uncertaintySamples())
              .isPresent();
    }
  }
}
