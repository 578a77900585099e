package dev.loopgauge.report.series;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.verify.SeriesFit;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * A host as blocks and a fixed part, as documents hold it.
 *
 * @param residualSamples how far the readings lie off the line, as a root of the mean square
 */
public record FitRecord(
    BigDecimal blocks,
    Optional<Integer> roundedBlocks,
    BigDecimal fixedSamples,
    Optional<BigDecimal> fixedMs,
    Optional<BigDecimal> residualSamples,
    Optional<BigDecimal> uncertaintyBlocks) {
  private static final int BLOCK_DECIMALS = 5;
  private static final int MOST_BLOCK_DECIMALS = 4;

  /** Of a fit. */
  static FitRecord of(SeriesFit fit) {
    return new FitRecord(
        Numbers.rounded(fit.blocks(), BLOCK_DECIMALS),
        Optional.of((int) fit.roundedBlocks()),
        Written.samples(fit.fixed().samples()),
        Optional.of(Written.ms(fit.fixed().ms())),
        Optional.of(Written.samples(fit.residualSamples())),
        Optional.of(Numbers.roundedUp(fit.uncertaintyBlocks(), BLOCK_DECIMALS)));
  }

  /** The blocks with their uncertainty: {@code 2.0000 ± 0.0003}. */
  public String blocksInWords() {
    double uncertainty = uncertaintyBlocks.map(BigDecimal::doubleValue).orElse(0.0);
    int decimals =
        uncertainty > 0
            ? Numbers.decimalsFor(uncertainty, MOST_BLOCK_DECIMALS)
            : MOST_BLOCK_DECIMALS;
    return Numbers.plain(blocks.doubleValue(), decimals)
        + " ± "
        + Numbers.plainUp(uncertainty, decimals);
  }
}
