package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Guidance;
import dev.loopgauge.chain.Instrument;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.plan.Comb;
import dev.loopgauge.plan.DirectSound;
import dev.loopgauge.plan.EarlierFeed;
import dev.loopgauge.plan.PictureBlocks;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A path and its predicted delay, as documents hold it.
 *
 * @param standing how late its listener hears it, or how far it is from its picture where that is
 *     worse
 * @param judged what the limits are applied to
 * @param positions how late it is at each position that hears it
 * @param limitSource what the limits rest on
 * @param earlierFeed what to do where an in-ear path is over
 * @param returnsToTalker how talkers find their own voice back, where the path returns it
 * @param guidance what players of its instrument found
 * @param ownVoice the comb of a voice heard through bone and, later, in the ears
 * @param directSound the same sound straight through the air
 * @param picture how the sound stands to its picture, where there is one
 * @param loopSamples what a measurement by cable runs through
 */
public record PathRecord(
    String name,
    Optional<Listener> listener,
    Optional<BigDecimal> delaySamples,
    BigDecimal delayMs,
    Optional<BigDecimal> toleranceSamples,
    Optional<BigDecimal> equivalentMetres,
    Optional<BigDecimal> equivalentFeet,
    Optional<Standing> standing,
    Optional<JudgedRecord> judged,
    List<SeatRecord> positions,
    Optional<BigDecimal> cautionMs,
    Optional<BigDecimal> limitMs,
    Optional<String> limitSource,
    Optional<FeedRecord> earlierFeed,
    Optional<TalkerRecord> returnsToTalker,
    Optional<GuidanceRecord> guidance,
    Optional<NullsRecord> ownVoice,
    Optional<DirectRecord> directSound,
    Optional<PictureRecord> picture,
    List<StageRecord> stages,
    Optional<BigDecimal> loopSamples,
    Optional<BigDecimal> loopMs,
    Optional<BigDecimal> loopToleranceSamples)
    implements Sparse {
  private static final int DISTANCE_DECIMALS = 3;

  /** Of a path of the chain. */
  static PathRecord of(Chain chain, PathBudget budget, PictureRule rule, PictureBlocks blocks) {
    ChainPath path = chain.path(budget.name());
    double ms = budget.delay().ms();
    Optional<PictureRecord> picture = PictureRecord.of(chain, budget, rule, blocks);
    Optional<Guidance> guidance = path.instrument().flatMap(i -> i.guidance(path.listener()));
    return new PathRecord(
        budget.name(),
        Optional.of(budget.listener()),
        Optional.of(Written.samples(budget.delay().samples())),
        Written.ms(ms),
        Optional.of(Written.samples(budget.toleranceSamples())),
        Optional.of(Numbers.rounded(budget.equivalentMetres(), DISTANCE_DECIMALS)),
        Optional.of(Numbers.rounded(budget.equivalentFeet(), DISTANCE_DECIMALS)),
        Optional.of(worse(budget.standing(), picture)),
        Optional.of(JudgedRecord.of(budget.judged())),
        budget.seats().stream().map(SeatRecord::of).toList(),
        Written.ms(budget.limits().cautionMs()),
        Written.ms(budget.limits().limitMs()),
        Optional.of(budget.limits().rule()),
        EarlierFeed.of(chain, budget).map(FeedRecord::of),
        path.returnsToTalker() ? Optional.of(TalkerRecord.of(budget.delay())) : Optional.empty(),
        guidance.map(row -> GuidanceRecord.of(path.instrument(), row, ms)),
        isSung(path) ? Optional.of(NullsRecord.of(new Comb(ms, 0))) : Optional.empty(),
        DirectSound.beside(chain, budget).map(DirectRecord::of),
        picture,
        StageRecord.of(budget.stages()),
        Optional.of(Written.samples(budget.loop().samples())),
        Optional.of(Written.ms(budget.loop().ms())),
        Optional.of(Written.samples(budget.loopToleranceSamples())));
  }

  private static Standing worse(Standing heard, Optional<PictureRecord> picture) {
    return picture
        .flatMap(PictureRecord::standing)
        .filter(seen -> seen.compareTo(heard) > 0)
        .orElse(heard);
  }

  /** A path of no stated instrument may be a singer's too; one that returns is told of as such. */
  private static boolean isSung(ChainPath path) {
    return path.listener() == Listener.IN_EAR
        && !path.returnsToTalker()
        && path.instrument().orElse(Instrument.VOICE) == Instrument.VOICE;
  }

  @Override
  public Set<String> leftOut() {
    return Set.of(
        "earlierFeed", "returnsToTalker", "guidance", "ownVoice", "directSound", "picture");
  }

  /** How its listener stands: {@code OVER by 7.4 ms}. */
  String inWords() {
    return heard().map(s -> inWords(s, judgedMs())).orElse("?");
  }

  /** What its listener's limits are applied to. */
  public BigDecimal judgedMs() {
    return judged.map(JudgedRecord::ms).orElse(delayMs);
  }

  /** How its listener stands, the picture left aside. */
  public Optional<Standing> heard() {
    boolean matches =
        picture.flatMap(PictureRecord::standing).orElse(Standing.WITHIN) == Standing.WITHIN;
    return matches ? standing : standing.map(s -> at(judgedMs()));
  }

  /** Whether it would stand otherwise by its whole delay than by what its listener hears. */
  boolean standsOtherwiseByItsDelay() {
    return judged.isPresent() && heard().filter(s -> s != at(delayMs)).isPresent();
  }

  private Standing at(BigDecimal ms) {
    if (limitMs.filter(limit -> ms.compareTo(limit) > 0).isPresent()) {
      return Standing.OVER;
    }
    return cautionMs.filter(caution -> ms.compareTo(caution) > 0).isPresent()
        ? Standing.CAUTION
        : Standing.WITHIN;
  }

  /** How its listener would stand at another delay. */
  String inWords(Standing at, BigDecimal ms) {
    return switch (at) {
      case WITHIN -> "within";
      case CAUTION -> "CAUTION";
      case OVER -> "OVER by " + beyond(ms);
    };
  }

  /** How far a delay that is over lies beyond the limit: {@code 7.4 ms}. */
  String beyond(BigDecimal ms) {
    return limitMs.map(limit -> ms.subtract(limit)).map(over -> Numbers.inMs(over, 1)).orElse("?");
  }
}
