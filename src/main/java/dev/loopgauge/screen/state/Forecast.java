package dev.loopgauge.screen.state;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.plan.PictureMatch;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.budget.PathRecord;
import dev.loopgauge.report.budget.PictureRecord;
import dev.loopgauge.report.budget.StageRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.report.html.StageKinds;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What is predicted of a path.
 *
 * @param ms its delay, with the unit
 * @param samples the same in samples
 * @param standing how its listener stands by it
 * @param told the same in words, with the limit
 * @param endMs when its listener hears it, in ms after the source
 * @param limitAtMs when they must have heard it
 * @param pieces its stages, one after the other
 * @param picture how it stands to its picture, and what to add
 */
public record Forecast(
    String name,
    String ms,
    String samples,
    Standing standing,
    String told,
    BigDecimal endMs,
    Optional<BigDecimal> limitAtMs,
    List<Piece> pieces,
    Optional<Sight> picture) {
  private static final int MS_DECIMALS = 2;
  private static final int SAMPLE_DECIMALS = 1;

  /**
   * How it stands to its picture.
   *
   * @param told in words, and what to add
   * @param earlyMs how early the sound is
   * @param rateHz the chain's rate
   * @param rule what that is judged by
   */
  public record Sight(String told, BigDecimal earlyMs, int rateHz, PictureRule rule) {
    private static Sight of(PictureRecord picture, SampleRate rate) {
      return new Sight(
          inWords(picture),
          picture.soundEarlyMs(),
          rate.hertz(),
          picture.rule().orElse(PictureRule.EBU_R37));
    }

    private static String inWords(PictureRecord picture) {
      return picture.told() + "; " + picture.advice() + ".";
    }
  }

  /** A stage on the time axis, in ms after the source. */
  public record Piece(
      String name, String kind, String figure, BigDecimal fromMs, BigDecimal toMs) {}

  /** Of a path. */
  public static Forecast of(Chain chain, PathRecord path) {
    return new Forecast(
        path.name(),
        ms(path.delayMs()),
        path.delaySamples().map(Forecast::samples).orElse(""),
        path.standing().orElse(Standing.WITHIN),
        told(path),
        path.delayMs(),
        path.limitMs().map(limit -> limit.add(path.delayMs()).subtract(path.judgedMs())),
        pieces(chain, path),
        path.picture().map(picture -> Sight.of(picture, chain.rate())));
  }

  private static String told(PathRecord path) {
    if (path.limitMs().isEmpty()) {
      return "no limit on delay alone";
    }
    BigDecimal limit = path.limitMs().get();
    String against =
        path.judged()
            .filter(judged -> judged.ms().compareTo(path.delayMs()) != 0)
            .map(judged -> ", " + ms(judged.ms()) + " after " + judged.against())
            .orElse("");
    BigDecimal spare = limit.subtract(path.judgedMs());
    return spare.signum() < 0
        ? "over its limit of %s by %s%s".formatted(brief(limit), ms(spare.negate()), against)
        : "%s below its limit of %s%s".formatted(ms(spare), brief(limit), against);
  }

  private static List<Piece> pieces(Chain chain, PathRecord path) {
    List<Piece> pieces = new ArrayList<>();
    BigDecimal at = BigDecimal.ZERO;
    for (StageRecord stage : path.stages()) {
      BigDecimal to = at.add(stage.delayMs().orElse(BigDecimal.ZERO));
      pieces.add(new Piece(stage.name(), kind(chain, stage.name()), ms(to.subtract(at)), at, to));
      at = to;
    }
    return pieces;
  }

  private static String kind(Chain chain, String stage) {
    return Optional.ofNullable(chain.stages().get(stage))
        .map(StageKinds::label)
        .orElse(StageKinds.label(stage));
  }

  private static String ms(BigDecimal ms) {
    return Numbers.inMs(ms, MS_DECIMALS);
  }

  private static String brief(BigDecimal ms) {
    return Numbers.brief(ms.doubleValue(), MS_DECIMALS) + " ms";
  }

  private static String samples(BigDecimal samples) {
    return Numbers.plain(samples.doubleValue(), SAMPLE_DECIMALS) + " samples";
  }

  /** When its listener hears it where it is later than predicted by so much, in ms. */
  BigDecimal arrival(double laterMs) {
    return endMs.add(Written.ms(laterMs));
  }

  /** How its listener stands then, in words; nothing where delay alone has no limit. */
  Optional<String> told(double laterMs) {
    return limitAtMs.map(
        limit -> {
          BigDecimal spare = limit.subtract(arrival(laterMs));
          return spare.signum() < 0
              ? ms(spare.negate()) + " over its limit"
              : ms(spare) + " below its limit";
        });
  }

  /** How it stands to its picture then, in words; nothing where it has none. */
  Optional<String> pictured(double laterMs) {
    return picture.map(
        sight ->
            Sight.inWords(
                PictureRecord.of(
                    new PictureMatch(name, name, sight.rule(), early(sight, laterMs)),
                    Optional.empty())));
  }

  private static Latency early(Sight sight, double laterMs) {
    return Latency.ofMs(sight.earlyMs().doubleValue() - laterMs, new SampleRate(sight.rateHz()));
  }

  /** The air of it, which no cable carries, in ms. */
  BigDecimal airMs() {
    return pieces.stream()
        .filter(piece -> piece.kind().equals(StageKinds.AIR))
        .map(piece -> piece.toMs().subtract(piece.fromMs()))
        .reduce(BigDecimal.ZERO, BigDecimal::add);
  }

  /** How far beyond its limit its listener is then, in ms; nothing where they are not. */
  Optional<BigDecimal> beyond(double laterMs) {
    return limitAtMs
        .map(limit -> arrival(laterMs).subtract(limit))
        .filter(beyond -> beyond.signum() > 0);
  }
}
