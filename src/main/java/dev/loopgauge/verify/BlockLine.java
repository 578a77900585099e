package dev.loopgauge.verify;

import dev.loopgauge.stats.StraightLine;
import java.util.List;

/**
 * Delay against block size as a straight line.
 *
 * @param blocks its slope: how many blocks the sound waits for
 * @param fixedSamples the delay that is left at no block size at all, in samples
 */
record BlockLine(double blocks, double fixedSamples) {
  /** The delay at a block size, in samples. */
  double samples(int blockSize) {
    return fixedSamples + blocks * blockSize;
  }

  /** How much later than the line a reading is, in samples. */
  double residual(SeriesReading reading) {
    return reading.delay().samples() - samples(reading.blockSize());
  }

  /** How far from the line a reading is, in its standard uncertainties. */
  double distance(SeriesReading reading) {
    return Math.abs(residual(reading)) / reading.uncertaintySamples();
  }

  /**
   * The line through two of the readings that the others agree with best: the smallest sum of
   * squared distances, each counted no higher than {@code farthest} squared. This is the consensus
   * of M. A. Fischler and R. C. Bolles, Comm. ACM 24(6), 1981, scored after P. H. S. Torr and A.
   * Zisserman, "MLESAC", 2000 (both from memory), over all pairs instead of random ones. Medians of
   * slopes (Theil, Sen, Siegel) would not do: delays rounded to 0.1 ms leave the slopes between
   * neighbouring sizes coarse, and a median counts them like the fine ones.
   */
  static BlockLine consensus(List<SeriesReading> readings, double farthest) {
    BlockLine best = leastSquares(readings);
    double least = Double.POSITIVE_INFINITY;
    for (SeriesReading one : readings) {
      for (SeriesReading other : readings) {
        if (one.blockSize() < other.blockSize()) {
          BlockLine line = through(one, other);
          double cost = line.cost(readings, farthest);
          if (cost < least) {
            least = cost;
            best = line;
          }
        }
      }
    }
    return best;
  }

  private double cost(List<SeriesReading> readings, double farthest) {
    double cost = 0;
    for (SeriesReading reading : readings) {
      double distance = Math.min(distance(reading), farthest);
      cost += distance * distance;
    }
    return cost;
  }

  private static BlockLine through(SeriesReading one, SeriesReading other) {
    double slope =
        (other.delay().samples() - one.delay().samples()) / (other.blockSize() - one.blockSize());
    return new BlockLine(slope, one.delay().samples() - slope * one.blockSize());
  }

  /** The line with the least squares, each reading weighted by its uncertainty. */
  static BlockLine leastSquares(List<SeriesReading> readings) {
    StraightLine line = line(readings);
    return new BlockLine(line.slope(), line.at(0));
  }

  /** The line of a given slope with the least squares. */
  static BlockLine through(List<SeriesReading> readings, double slope) {
    StraightLine line = line(readings);
    return new BlockLine(slope, line.middleY() - slope * line.middleX());
  }

  /** The standard uncertainty of the least squares slope, from those of the readings. */
  static double slopeUncertainty(List<SeriesReading> readings) {
    return 1 / Math.sqrt(line(readings).spread());
  }

  private static StraightLine line(List<SeriesReading> readings) {
    return StraightLine.weighted(
        readings.stream().mapToDouble(SeriesReading::blockSize).toArray(),
        readings.stream().mapToDouble(r -> r.delay().samples()).toArray(),
        readings.stream().mapToDouble(r -> Math.pow(r.uncertaintySamples(), -2)).toArray());
  }
}
