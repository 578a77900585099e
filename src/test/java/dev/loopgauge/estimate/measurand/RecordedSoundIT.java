package dev.loopgauge.estimate.measurand;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.outside.NeedsTool;
import dev.loopgauge.signal.filter.Design;
import dev.loopgauge.signal.filter.Designs;
import dev.loopgauge.signal.filter.Filter;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Songs that people played and words that they spoke show the delays of filters too. */
@NeedsTool({"ffmpeg", RecordedSound.SONGS_FOLDER, RecordedSound.WORDS_FOLDER})
class RecordedSoundIT {
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.1);
  private static final int DELAY = 300;

  @ParameterizedTest
  @EnumSource(names = {"SONGS", "WORDS"})
  void showsTheDelaysOfFilters(FilteredTrial.Kind kind) {
    PathTally tally = new PathTally();
    for (Design design : Designs.all()) {
      Filter filter = design.at(Designs.RATE);
      FilteredTrial trial = new FilteredTrial(Optional.of(filter), kind, DELAY, 40, 1);
      Estimate estimate = ESTIMATOR.estimate(List.of(trial.reading()));
      Optional<Measurement> measured =
          estimate instanceof Estimate.Found found
              ? Optional.of(found.measurement())
              : Optional.empty();
      tally.add(measured, filter, DELAY);
    }
    assertTrue(tally.covers(0.94), tally.row("pure delay"));
    assertTrue(tally.holdsMoment(0.94), tally.row("delay"));
  }
}
