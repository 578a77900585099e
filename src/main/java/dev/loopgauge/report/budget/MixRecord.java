package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Standing;
import dev.loopgauge.plan.Comb;
import dev.loopgauge.plan.Effect;
import dev.loopgauge.plan.MixArrival;
import dev.loopgauge.plan.MixBudget;
import dev.loopgauge.plan.MixOutcome;
import dev.loopgauge.plan.MixPair;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Paths that are heard together, as documents hold them. */
public record MixRecord(String name, List<ArrivalRecord> paths, List<PairRecord> pairs) {
  /**
   * A path in the mix.
   *
   * @param delayIfAllCompensatedMs if the desk also compensates what isn't known of; left out where
   *     all is known
   */
  public record ArrivalRecord(
      String path,
      Optional<BigDecimal> addedByDeskSamples,
      BigDecimal addedByDeskMs,
      Optional<BigDecimal> delaySamples,
      BigDecimal delayMs,
      Optional<Standing> standing,
      Optional<BigDecimal> delayIfAllCompensatedSamples,
      Optional<BigDecimal> delayIfAllCompensatedMs,
      Optional<Standing> standingIfAllCompensated)
      implements Sparse {
    private static ArrivalRecord of(MixArrival arrival) {
      Optional<MixArrival> unsure =
          Optional.of(arrival).filter(a -> !a.added().equals(a.addedIfAll()));
      return new ArrivalRecord(
          arrival.path().name(),
          Optional.of(Written.samples(arrival.added().samples())),
          Written.ms(arrival.added().ms()),
          Optional.of(Written.samples(arrival.delay().samples())),
          Written.ms(arrival.delay().ms()),
          Optional.of(arrival.standing()),
          unsure.map(a -> Written.samples(a.delayIfAll().samples())),
          unsure.map(a -> Written.ms(a.delayIfAll().ms())),
          unsure.map(MixArrival::standingIfAll));
    }

    @Override
    public Set<String> leftOut() {
      return Set.of(
          "delayIfAllCompensatedSamples", "delayIfAllCompensatedMs", "standingIfAllCompensated");
    }
  }

  /** Two paths, the earlier first. */
  public record PairRecord(
      List<String> paths,
      Optional<BigDecimal> toleranceSamples,
      List<String> unknownStages,
      List<OutcomeRecord> outcomes) {
    /**
     * Checks the lists.
     *
     * @throws IllegalArgumentException when these aren't two paths, or nothing comes of them
     */
    public PairRecord {
      if (paths.size() != 2 || outcomes.isEmpty()) {
        throw new IllegalArgumentException("a pair is 2 paths and what comes of them: " + paths);
      }
    }

    private static PairRecord of(MixPair pair) {
      return new PairRecord(
          List.of(pair.first().path(), pair.second().path()),
          Optional.of(Written.samples(pair.toleranceSamples())),
          pair.unknown(),
          pair.outcomes().stream().map(OutcomeRecord::of).toList());
    }

    /** As if the desk compensated none of the unknown stages. */
    OutcomeRecord known() {
      return outcomes.get(0);
    }
  }

  /** How they meet if the desk compensates these stages. */
  public record OutcomeRecord(
      List<String> compensated,
      Optional<BigDecimal> secondLaterSamples,
      BigDecimal secondLaterMs,
      Optional<BigDecimal> loopSecondLaterSamples,
      BigDecimal loopSecondLaterMs,
      Optional<BigDecimal> laterLevelDb,
      Optional<BigDecimal> firstNullHz,
      Optional<BigDecimal> nullSpacingHz,
      Optional<BigDecimal> rippleDb,
      Effect effect,
      String reason) {
    private static OutcomeRecord of(MixOutcome outcome) {
      Comb comb = outcome.overlap().comb();
      return new OutcomeRecord(
          outcome.compensated(),
          Optional.of(Written.samples(outcome.secondLater().samples())),
          Written.ms(outcome.secondLater().ms()),
          Optional.of(Written.samples(outcome.loopSecondLater().samples())),
          Written.ms(outcome.loopSecondLater().ms()),
          Optional.of(Written.db(outcome.overlap().laterLevelDb())),
          Written.hz(comb.firstNullHz()),
          Written.hz(comb.nullSpacingHz()),
          Written.boxed(comb.rippleDb()).map(Written::db),
          outcome.overlap().effect(),
          outcome.overlap().reason());
    }
  }

  /** Of a mix. */
  static MixRecord of(MixBudget mix) {
    return new MixRecord(
        mix.name(),
        mix.arrivals().stream().map(ArrivalRecord::of).toList(),
        mix.pairs().stream().map(PairRecord::of).toList());
  }
}
