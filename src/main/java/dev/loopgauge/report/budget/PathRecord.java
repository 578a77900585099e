package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
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
        SeatRecord.of(budget.seats()),
        Written.ms(budget.limits().cautionMs()),
        Written.ms(budget.limits().limitMs()),
        Optional.of(budget.limits().rule()),
        FeedRecord.of(EarlierFeed.of(chain, budget)),
        path.returnsToTalker() ? Optional.of(TalkerRecord.of(budget.delay())) : Optional.empty(),
        GuidanceRecord.of(path, ms),
        isSung(path) ? Optional.of(NullsRecord.of(new Comb(ms, 0))) : Optional.empty(),
        DirectRecord.of(DirectSound.beside(chain, budget)),
        picture,
        StageRecord.of(budget.stages()),
        Optional.of(Written.samples(budget.loop().samples())),
        Optional.of(Written.ms(budget.loop().ms())),
        Optional.of(Written.samples(budget.loopToleranceSamples())));
  }

  private static Standing worse(Standing heard, Optional<PictureRecord> picture) {
    Standing seen = seen(picture);
    return seen.compareTo(heard) > 0 ? seen : heard;
  }

  private static Standing seen(Optional<PictureRecord> picture) {
    return picture.isPresent() ? picture.get().standing().orElse(Standing.WITHIN) : Standing.WITHIN;
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
    return heard().isPresent() ? inWords(heard().get(), judgedMs()) : "?";
  }

  /** What its listener's limits are applied to. */
  public BigDecimal judgedMs() {
    return judged.isPresent() ? judged.get().ms() : delayMs;
  }

  /** How its listener stands, the picture left aside. */
  public Optional<Standing> heard() {
    return standing.isEmpty() || seen(picture) == Standing.WITHIN
        ? standing
        : Optional.of(at(judgedMs()));
  }

  /** Whether it would stand otherwise by its whole delay than by what its listener hears. */
  boolean standsOtherwiseByItsDelay() {
    return judged.isPresent() && heard().isPresent() && heard().get() != at(delayMs);
  }

  private Standing at(BigDecimal ms) {
    if (isAbove(ms, limitMs)) {
      return Standing.OVER;
    }
    return isAbove(ms, cautionMs) ? Standing.CAUTION : Standing.WITHIN;
  }

  private static boolean isAbove(BigDecimal ms, Optional<BigDecimal> limit) {
    return limit.isPresent() && ms.compareTo(limit.get()) > 0;
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
    return limitMs.isPresent() ? Numbers.inMs(ms.subtract(limitMs.get()), 1) : "?";
  }
}
