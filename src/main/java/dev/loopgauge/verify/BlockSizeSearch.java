package dev.loopgauge.verify;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.estimate.Measurement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Whether the host running at another block size would explain a difference. */
final class BlockSizeSearch {
  private BlockSizeSearch() {}

  /**
   * The block sizes at which the loop would meet the measurement to within {@code limit} samples
   * and its uncertainty, the closest first.
   */
  static List<Explanation> explain(
      Measurement measured, Chain chain, ChainPath path, double limit) {
    double measuredSamples = measured.delay().samples();
    List<Explanation> fitting = new ArrayList<>();
    for (int size : BlockSizes.USUAL) {
      double predicted =
          ChainBudget.of(chain.withBlockSize(size), path).loop().seconds()
              * measured.delay().rate().hertz();
      double residual = measuredSamples - predicted;
      if (Math.abs(residual) <= limit + measured.uncertaintySamples()) {
        fitting.add(new Explanation("block-size", text(size, chain), predicted, residual));
      }
    }
    fitting.sort(Comparator.comparingDouble(e -> Math.abs(e.residualSamples())));
    return fitting;
  }

  private static String text(int size, Chain chain) {
    return String.format(
        Locale.ROOT,
        "the host runs at a block of %d samples, not %d: check the block size in the host's audio"
            + " settings",
        size,
        chain.blockSize());
  }
}
