package dev.loopgauge.estimate;

import dev.loopgauge.estimate.integrity.GainModulation;
import dev.loopgauge.estimate.integrity.IntegrityFindings;
import dev.loopgauge.estimate.integrity.LostSound;
import dev.loopgauge.estimate.integrity.Splice;
import dev.loopgauge.estimate.integrity.ZeroRuns;
import dev.loopgauge.estimate.measurand.PathDelay;
import dev.loopgauge.estimate.path.DelayStep;
import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.path.LevelStep;
import dev.loopgauge.estimate.path.ResidualTests;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a return lacks of what a filter would make of its reference: gaps, a splice, a level that
 * moves. Of the filters that were fitted, the taps and the response in bands, the one that leaves
 * less says what no filter explains.
 */
final class Losses {
  /**
   * More lost sound than this share of the reference leaves no trust in the rest: so little may be
   * another pattern of the same drum samples. Of 300 such pairs 17 gave a false number, 33 without
   * this; of 400 returns that lacked 5 to 70 % it refuses 185, of which 132 would be right.
   */
  private static final double HARMLESS_LOSS = 0.1;

  private final Spectra spectra;
  private final Fit fit;
  private final ResidualTests residualTests;
  private final SampleRate rate;
  private final List<LostSound.Gap> gaps;
  private final Optional<DelayStep> step;

  /** The losses in the return behind a fit. */
  Losses(Spectra spectra, Fit fit, PathDelay path) {
    ResidualTests taps = fit.residualTests();
    this.spectra = spectra;
    this.fit = fit;
    boolean byBands = path.residual().isPresent() && leavesLess(path.residual().get(), taps);
    this.residualTests = byBands ? path.residual().get() : taps;
    this.rate = spectra.rate();
    this.gaps = findGaps();
    this.step = DelayStep.of(spectra, fit);
  }

  private static boolean leavesLess(ResidualTests one, ResidualTests other) {
    return one.residual().residualEnergy() < other.residual().residualEnergy();
  }

  /**
   * Whether the path's level steps, or moves by more than one step explains. A handful of
   * frequencies can't tell.
   */
  Optional<Finding> level() {
    if (fit.isNarrow()) {
      return Optional.empty();
    }
    GainModulation gains = GainModulation.of(residualTests.lostSound());
    Optional<LevelStep> step = levelStep();
    if (step.isPresent() && Math.abs(step.get().byDb()) > gains.withoutStep().byDb()) {
      return Optional.of(IntegrityFindings.levelStep(step.get().byDb(), step.get().at(), rate));
    }
    double byDb = gains.byDb();
    return byDb > GainModulation.LEAST_DB
        ? Optional.of(IntegrityFindings.gainModulation(byDb))
        : Optional.empty();
  }

  /** Where the path's level steps, if it does. In a sweep it does at both ends of a gap, too. */
  private Optional<LevelStep> levelStep() {
    Optional<LevelStep> step = LevelStep.of(spectra, fit);
    return step.isEmpty() && gaps.isEmpty() && splice().isEmpty()
        ? LevelStep.inSweep(spectra, fit)
        : step;
  }

  /** Where a reading splices, which no filter on both sides explains. */
  Optional<Splice> splice() {
    return step.map(DelayStep::splice);
  }

  /** Whether the delay of a reading steps, and beyond doubt does not drift. */
  boolean isStepAndNoDrift() {
    return step.isPresent() && step.get().isNoDrift();
  }

  /** Sound that is missing, as a finding. */
  Optional<Finding> gap() {
    if (gaps.isEmpty()) {
      return Optional.empty();
    }
    double lost = 0;
    for (LostSound.Gap gap : gaps) {
      lost += gap.length();
    }
    double whole = 0;
    for (Reading reading : spectra.readings()) {
      whole += reading.reference().length();
    }
    return Optional.of(
        IntegrityFindings.gap(gaps.get(0), gaps.size() - 1, lost > HARMLESS_LOSS * whole, rate));
  }

  /** Digital silence where there should be sound proves a loss; else where the arrivals lack. */
  private List<LostSound.Gap> findGaps() {
    List<LostSound.Gap> zeros = new ArrayList<>();
    for (Reading reading : spectra.readings()) {
      zeros.addAll(ZeroRuns.of(reading, fit.measured()));
    }
    return zeros.isEmpty() ? residualTests.gaps() : zeros;
  }

  /** All that the return lacks, in its order. */
  List<MissingSound> missing() {
    List<LostSound.Gap> all = new ArrayList<>(gaps);
    splice().flatMap(Splice::lost).ifPresent(all::add);
    if (all.isEmpty()) {
      return List.of();
    }
    all.sort(Comparator.comparingInt(LostSound.Gap::from));
    List<MissingSound> missing = new ArrayList<>();
    for (LostSound.Gap gap : all) {
      missing.add(new MissingSound(seconds(gap.from()), 1000 * seconds(gap.length())));
    }
    return missing;
  }

  private double seconds(int samples) {
    return (double) samples / rate.hertz();
  }
}
