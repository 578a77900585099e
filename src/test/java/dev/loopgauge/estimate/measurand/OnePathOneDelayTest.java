package dev.loopgauge.estimate.measurand;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.campaign.Campaign;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.signal.filter.AllPass;
import dev.loopgauge.signal.filter.Crossover;
import dev.loopgauge.signal.filter.Design;
import dev.loopgauge.signal.filter.Designs;
import dev.loopgauge.signal.filter.Filter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * One path has one delay, whatever it is measured with. In small here; the profile {@code
 * conformance} tries 50 seeds. The table goes to target/one-path.md.
 */
@Tag("campaign")
class OnePathOneDelayTest {
  private static final int SLICES = Campaign.fullOrSmall(50, 1);
  private static final double[] LEVELS = {60, 30, 10};

  /** In dB; below, a click is heard above 8 kHz alone, and other stimuli hear another part. */
  private static final double LEAST_COMPARED = 30;

  /** Between the pure delays that are tried, in samples: from 0 to 1,960 in full. */
  private static final int STEP = 40;

  private static final Campaign CAMPAIGN = Campaign.named("one-path-one-delay");
  private static final Path TABLE = Path.of("target", "one-path.md");
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.1);

  private static Optional<Measurement> measured(FilteredTrial trial) {
    Estimate estimate = ESTIMATOR.estimate(List.of(trial.reading()));
    return estimate instanceof Estimate.Found found
        ? Optional.of(found.measurement())
        : Optional.empty();
  }

  /** One filter measured with each stimulus. */
  private static PathTally tried(Design design, double decibels, int trial) {
    PathTally tally = new PathTally();
    Filter filter = design.at(Designs.RATE);
    int delay = STEP * trial;
    List<Measurement> all = new ArrayList<>();
    for (FilteredTrial.Kind kind : FilteredTrial.Kind.tried()) {
      long seed = CAMPAIGN.seed(trial + 31L * design.toString().hashCode());
      Optional<Measurement> measured =
          measured(new FilteredTrial(Optional.of(filter), kind, delay, decibels, seed));
      tally.add(measured, filter, delay);
      if (isWronglyInverted(design, measured)) {
        tally.wrongPolarity(kind + ", seed " + seed);
      }
      measured.ifPresent(all::add);
    }
    if (decibels >= LEAST_COMPARED) {
      tally.compare(all);
    }
    return tally;
  }

  private static boolean isWronglyInverted(Design design, Optional<Measurement> measured) {
    return measured.filter(m -> m.polarity() == Polarity.INVERTED).isPresent()
        && !turnsThePhase(design);
  }

  /** An all-pass of the first order inverts what lies above it; its polarity is open. */
  private static boolean turnsThePhase(Design design) {
    return design instanceof AllPass
        || (design instanceof Crossover crossover && crossover.output() == Crossover.Output.SUM);
  }

  private static Optional<PathTally> slice(Design design, double decibels, int trial) {
    String name = "%s, %.0f dB, %d".formatted(design, decibels, trial);
    return CAMPAIGN
        .slice(name, () -> tried(design, decibels, trial).figures())
        .map(PathTally::read);
  }

  @Test
  void holdsForFiltersOfEveryKind() throws IOException {
    Map<String, PathTally> rows = new LinkedHashMap<>();
    PathTally all = new PathTally();
    // Seeds first, filters then: a run that ends in time has seen something of each filter.
    for (int slice = 0; slice < SLICES; slice++) {
      for (Design design : Designs.all()) {
        for (double decibels : LEVELS) {
          Optional<PathTally> tally = slice(design, decibels, slice);
          String row = "%s, %.0f dB".formatted(design, decibels);
          tally.ifPresent(found -> rows.merge(row, found, PathTally::plus));
        }
      }
    }
    for (PathTally row : rows.values()) {
      all = all.plus(row);
    }
    rows.put("all", all);
    String stimuli = CAMPAIGN.label() + "; " + FilteredTrial.Kind.tried();
    StringBuilder table = new StringBuilder(PathTally.tableHead(stimuli));
    rows.forEach((name, tally) -> table.append(tally.row(name)));
    Files.createDirectories(TABLE.getParent());
    Files.writeString(TABLE, table.toString());
    assertEquals(List.of(), all.wrongPolarity());
    assertTrue(all.covers(0.94), all.row("pure delay"));
    assertTrue(all.holdsMoment(0.94), all.row("delay"));
    assertTrue(all.overlaps(0.97), all.row("pairs of stimuli"));
    CAMPAIGN.assumeWhole();
  }
}
