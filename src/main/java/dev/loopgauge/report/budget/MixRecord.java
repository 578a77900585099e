package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Judged;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.plan.Blend;
import dev.loopgauge.plan.Comb;
import dev.loopgauge.plan.MixArrival;
import dev.loopgauge.plan.MixBudget;
import dev.loopgauge.plan.MixOutcome;
import dev.loopgauge.plan.MixPair;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.signal.Latency;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Paths that are heard together, as documents hold them.
 *
 * @param pairs those that carry the same input, two and two
 * @param pairsLeftOut how many more pairs there are that tell no more; left out where there is none
 */
public record MixRecord(
    String name, List<ArrivalRecord> paths, List<PairRecord> pairs, Optional<Integer> pairsLeftOut)
    implements Sparse {
  /**
   * A path in the mix.
   *
   * @param delayIfAllCompensatedMs if the desk also compensates what isn't known of; left out where
   *     all is known
   * @param judgedMs what the listener's limits are applied to, where that isn't the delay
   * @param judgedIfAllCompensatedMs the same, if the desk also compensates what isn't known of
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
      Optional<Standing> standingIfAllCompensated,
      Optional<BigDecimal> judgedMs,
      Optional<BigDecimal> judgedIfAllCompensatedMs)
      implements Sparse {
    private static ArrivalRecord of(MixArrival arrival) {
      boolean sure = arrival.added().samples() == arrival.addedIfAll().samples();
      Latency ifAll = arrival.delayIfAll();
      return new ArrivalRecord(
          arrival.path().name(),
          Optional.of(Written.samples(arrival.added().samples())),
          Written.ms(arrival.added().ms()),
          Optional.of(Written.samples(arrival.delay().samples())),
          Written.ms(arrival.delay().ms()),
          Optional.of(arrival.standing()),
          sure ? Optional.empty() : Optional.of(Written.samples(ifAll.samples())),
          sure ? Optional.empty() : Optional.of(Written.ms(ifAll.ms())),
          sure ? Optional.empty() : Optional.of(arrival.standingIfAll()),
          judged(arrival.judged(), arrival.delay()),
          sure ? Optional.empty() : judged(arrival.judgedIfAll(), ifAll));
    }

    private static Optional<BigDecimal> judged(Judged judged, Latency delay) {
      BigDecimal ms = Written.ms(judged.ms());
      return ms.compareTo(Written.ms(delay.ms())) == 0 ? Optional.empty() : Optional.of(ms);
    }

    /** What the listener's limits are applied to. */
    BigDecimal limitedMs() {
      return judgedMs.orElse(delayMs);
    }

    /** The same, if the desk also compensates what isn't known of. */
    BigDecimal limitedIfAllMs() {
      return delayIfAllCompensatedMs.isPresent()
          ? judgedIfAllCompensatedMs.orElse(delayIfAllCompensatedMs.get())
          : limitedMs();
    }

    @Override
    public Set<String> leftOut() {
      return Set.of(
          "delayIfAllCompensatedSamples",
          "delayIfAllCompensatedMs",
          "standingIfAllCompensated",
          "judgedMs",
          "judgedIfAllCompensatedMs");
    }
  }

  /**
   * Two paths, the earlier first.
   *
   * @param position where both are heard, if loudspeakers at positions make them
   */
  public record PairRecord(
      List<String> paths,
      Optional<String> position,
      Optional<BigDecimal> toleranceSamples,
      List<String> unknownStages,
      List<OutcomeRecord> outcomes)
      implements Sparse {
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
      List<OutcomeRecord> outcomes = new ArrayList<>();
      for (MixOutcome outcome : pair.outcomes()) {
        outcomes.add(OutcomeRecord.of(outcome));
      }
      return new PairRecord(
          List.of(pair.first().path(), pair.second().path()),
          pair.position(),
          Optional.of(Written.samples(pair.toleranceSamples())),
          pair.unknown(),
          outcomes);
    }

    @Override
    public Set<String> leftOut() {
      return Set.of("position");
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
      Blend effect,
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
          Written.db(comb.rippleDb()),
          outcome.overlap().effect(),
          outcome.overlap().reason());
    }
  }

  /** Of a mix. */
  static MixRecord of(MixBudget mix) {
    List<ArrivalRecord> paths = new ArrayList<>();
    for (MixArrival arrival : mix.arrivals()) {
      paths.add(ArrivalRecord.of(arrival));
    }
    List<PairRecord> pairs = new ArrayList<>();
    for (MixPair pair : mix.pairs()) {
      pairs.add(PairRecord.of(pair));
    }
    Optional<Integer> leftOut = mix.leftOut() > 0 ? Optional.of(mix.leftOut()) : Optional.empty();
    return new MixRecord(mix.name(), paths, pairs, leftOut);
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("pairsLeftOut");
  }
}
