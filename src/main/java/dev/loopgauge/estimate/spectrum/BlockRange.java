package dev.loopgauge.estimate.spectrum;

import dev.loopgauge.estimate.reading.Reading;
import java.util.ArrayList;
import java.util.List;

/**
 * Consecutive blocks of one reading.
 *
 * @param reading the reading's index
 * @param from the first block
 * @param to the block after the last
 */
public record BlockRange(int reading, int from, int to) {
  /**
   * Into how many shares work is cut. Always the same, so that sums don't depend on the number of
   * cores; few, since each share needs arrays of its own.
   */
  private static final int SHARES = 4;

  /** All blocks of some readings in their order, cut into shares to be worked on side by side. */
  public static List<List<BlockRange>> shares(List<Reading> readings, BlockPlan plan) {
    int all = 0;
    for (Reading reading : readings) {
      all += plan.blocks(reading.reference().length());
    }
    int shares = Math.min(all, SHARES);
    List<List<BlockRange>> cut = new ArrayList<>();
    for (int i = 0; i < shares; i++) {
      cut.add(between(all * i / shares, all * (i + 1) / shares, readings, plan));
    }
    return cut;
  }

  private static List<BlockRange> between(
      int first, int end, List<Reading> readings, BlockPlan plan) {
    List<BlockRange> ranges = new ArrayList<>();
    int start = 0;
    for (int i = 0; i < readings.size(); i++) {
      int count = plan.blocks(readings.get(i).reference().length());
      int from = Math.max(first - start, 0);
      int to = Math.min(end - start, count);
      if (from < to) {
        ranges.add(new BlockRange(i, from, to));
      }
      start += count;
    }
    return ranges;
  }
}
