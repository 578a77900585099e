package dev.loopgauge.verify;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.signal.Latency;
import java.util.List;

/**
 * A host as a number of blocks plus a fixed part.
 *
 * @param blocks how many blocks, as the readings have it
 * @param uncertaintyBlocks the expanded uncertainty of that, k = 2
 * @param toldBlocks the number of blocks that delays are told by: a whole one where {@code blocks}
 *     is one to within its uncertainty
 * @param fixed the delay that does not grow with the block size
 * @param readings each reading against the line of the two, in the order given
 */
public record SeriesFit(
    double blocks,
    double uncertaintyBlocks,
    double toldBlocks,
    Latency fixed,
    List<Fitted> readings) {
  /** How many expanded uncertainties off a whole number still counts as one: three standard. */
  private static final double STILL_WHOLE = 1.5;

  /**
   * One reading against the line.
   *
   * @param reading the reading
   * @param fitted what the line says
   * @param outlier whether it is too far off to be of the same rig, and was left out
   */
  public record Fitted(SeriesReading reading, Latency fitted, boolean outlier) {
    /** How much later than the line the reading is, in samples. */
    public double laterSamples() {
      return reading.delay().minus(fitted).samples();
    }
  }

  /**
   * What the line says of a block size.
   *
   * @param blockSize the block size
   * @param delay the delay there
   */
  public record Prediction(int blockSize, Latency delay) {}

  /** Copies the list. */
  public SeriesFit {
    readings = List.copyOf(readings);
  }

  static boolean isWhole(double blocks, double uncertaintyBlocks) {
    return Math.abs(blocks - Math.rint(blocks)) <= STILL_WHOLE * uncertaintyBlocks;
  }

  /** Whether the number of blocks is a whole one to within its uncertainty. */
  public boolean isWhole() {
    return isWhole(blocks, uncertaintyBlocks);
  }

  /** The whole number of blocks nearest to what the readings have. */
  public long roundedBlocks() {
    return Math.round(blocks);
  }

  /** The delay at a block size, by the line. */
  public Latency at(int blockSize) {
    return at(blockSize, toldBlocks, fixed);
  }

  static Latency at(int blockSize, double blocks, Latency fixed) {
    return new Latency(fixed.samples() + blocks * blockSize, fixed.rate());
  }

  /** How far the readings that agree lie from the line, root mean square, in samples. */
  public double residualSamples() {
    return Math.sqrt(
        agreeing().stream()
            .mapToDouble(fitted -> Math.pow(fitted.laterSamples(), 2))
            .average()
            .orElse(0));
  }

  /** How far the furthest of the readings that agree lies from the line, in samples. */
  public double worstSamples() {
    return agreeing().stream()
        .mapToDouble(fitted -> Math.abs(fitted.laterSamples()))
        .max()
        .orElse(0);
  }

  /** The readings that the line was laid through. */
  public List<Fitted> agreeing() {
    return readings.stream().filter(fitted -> !fitted.outlier()).toList();
  }

  /** What the line says of the usual block sizes. */
  public List<Prediction> predictions() {
    return BlockSizes.USUAL.stream().map(size -> new Prediction(size, at(size))).toList();
  }
}
