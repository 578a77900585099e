package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.Explanation;
import dev.loopgauge.verify.ExtraMeasurement;
import dev.loopgauge.verify.Verdict;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How a delay stands against its budget, as documents hold it.
 *
 * @param allowSamples what was allowed besides the tolerance; left out where nothing was
 * @param differenceBlocks the difference in blocks; left out where it is no whole number of them
 */
public record ComparisonRecord(
    Optional<String> path,
    BigDecimal predictedSamples,
    Optional<BigDecimal> predictedMs,
    Optional<BigDecimal> toleranceSamples,
    Optional<BigDecimal> allowSamples,
    BigDecimal differenceSamples,
    Optional<BigDecimal> differenceMs,
    Optional<Integer> differenceBlocks,
    Optional<Verdict> verdict,
    List<ExplanationRecord> explanations,
    Optional<ExtraRecord> tellApart,
    Optional<LimitRecord> towardsLimit)
    implements Sparse {
  /**
   * What may be the cause.
   *
   * @param ties whether it is one of several that are as likely as the likeliest; left out where
   *     that stands alone
   */
  public record ExplanationRecord(
      Optional<String> cause,
      String text,
      Optional<BigDecimal> predictedSamples,
      Optional<BigDecimal> residualSamples,
      Optional<Boolean> ties)
      implements Sparse {
    private static List<ExplanationRecord> all(List<Explanation> explanations) {
      int ties = 0;
      for (Explanation explanation : explanations) {
        ties += explanation.ties() ? 1 : 0;
      }
      List<ExplanationRecord> records = new ArrayList<>();
      for (Explanation explanation : explanations) {
        records.add(of(explanation, ties > 1));
      }
      return records;
    }

    private static ExplanationRecord of(Explanation explanation, boolean tied) {
      return new ExplanationRecord(
          Optional.of(explanation.cause()),
          explanation.text(),
          Optional.of(Written.samples(explanation.predictedSamples())),
          Optional.of(Written.samples(explanation.residualSamples())),
          tied ? Optional.of(explanation.ties()) : Optional.empty());
    }

    @Override
    public Set<String> leftOut() {
      return Set.of("ties");
    }

    /** Whether it explains the delay. */
    boolean fits() {
      return !cause.equals(Optional.of(Explanation.NONE_FITS))
          && !cause.equals(Optional.of(Explanation.DRIFT))
          && !cause.equals(Optional.of(Explanation.CROSSTALK));
    }
  }

  /** A measurement that would tell causes apart, or did. */
  public record ExtraRecord(
      Optional<String> text,
      Optional<Integer> blockSize,
      Optional<BigDecimal> measuredSamples,
      List<OutcomeRecord> outcomes)
      implements Sparse {
    private static ExtraRecord of(ExtraMeasurement extra) {
      return new ExtraRecord(
          Optional.of(extra.text()),
          extra.blockSize().isPresent()
              ? Optional.of(extra.blockSize().getAsInt())
              : Optional.empty(),
          Written.boxed(extra.measuredSamples()).map(Written::samples),
          extra.outcomes().stream()
              .map(o -> new OutcomeRecord(o.change(), Written.samples(o.predictedSamples())))
              .toList());
    }

    @Override
    public Set<String> leftOut() {
      return Set.of("measuredSamples");
    }
  }

  /** What it would read with one of the causes. */
  public record OutcomeRecord(String change, BigDecimal predictedSamples) {}

  /** Of a comparison, where there is one. */
  static Optional<ComparisonRecord> of(Optional<Comparison> comparison) {
    return comparison.isPresent() ? Optional.of(of(comparison.get())) : Optional.empty();
  }

  /** Of a comparison. */
  static ComparisonRecord of(Comparison c) {
    return new ComparisonRecord(
        Optional.of(c.path()),
        Written.samples(c.predicted().samples()),
        Optional.of(Written.ms(c.predicted().ms())),
        Optional.of(Written.samples(c.toleranceSamples())),
        c.allowSamples() > 0 ? Optional.of(Written.samples(c.allowSamples())) : Optional.empty(),
        Written.samples(c.difference().samples()),
        Optional.of(Written.ms(c.difference().ms())),
        c.wholeBlocks().isPresent() ? Optional.of(c.wholeBlocks().getAsInt()) : Optional.empty(),
        Optional.of(c.verdict()),
        ExplanationRecord.all(c.explanations()),
        c.tellApart().map(ExtraRecord::of),
        c.towardsLimit().map(LimitRecord::of));
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("allowSamples", "differenceBlocks", "tellApart", "towardsLimit");
  }

  /** The path's name in a sentence. */
  String pathName() {
    return path.orElse("the path");
  }
}
