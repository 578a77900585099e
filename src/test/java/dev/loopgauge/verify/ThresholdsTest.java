package dev.loopgauge.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.Latency;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What decides, on either side of where it decides. */
class ThresholdsTest {
  private static Chain rig(String stages, String loop) {
    return Rigs.parsed(
        """
        chain: Pier
        sample-rate: 48000
        block-size: 64
        stages:
        %spaths:
          all: { listener: wedge, stages: [%s], loop: [%s] }
        """
            .formatted(stages.indent(2), loop, loop));
  }

  @ParameterizedTest
  @CsvSource({"0.11, 0.01, true", "0.09, 0.01, false", "-0.52, 0.51, true", "0.5, 0.51, false"})
  void aMoveIsMoreThanATenthOfASampleAndThanItsUncertainty(
      double samples, double uncertainty, boolean moved) {
    assertEquals(moved, new Shift(samples, uncertainty).moved());
  }

  @ParameterizedTest
  @CsvSource({"2.149, true", "1.851, true", "2.151, false", "1.849, false"})
  void blocksAreWholeWithinThreeStandardUncertainties(double blocks, boolean whole) {
    assertEquals(whole, SeriesFit.isWhole(blocks, 0.1));
  }

  @Test
  void halfASampleIsLeftToRounding() {
    assertEquals(0.7, ChangeSearch.tolerated(0.2), 1e-12);
  }

  /** 343.2 m/s at 20 degrees C. */
  @ParameterizedTest
  @CsvSource({
    "3, 0.99, 1",
    "3, 1.01, 0",
    "3, -0.99, 1",
    "3, -1.01, 0",
    "24, 7.99, 1",
    "24, 8.01, 0"
  })
  void aDistanceIsBelievedToBeOffByAThirdOfItself(double stated, double off, int changes) {
    Chain chain = rig("throw: { metres: %s }".formatted(stated), "throw");
    assertEquals(changes, SingleChanges.distances(chain, off / 343.2).size());
  }

  /**
   * A block size of 128 costs nothing and leaves what 'riser' is more than 64, riser itself leaves
   * nothing and costs 1. An allowance of 1 is rectangular, 1 / sqrt 3: up to sqrt(2 / 3) = 0.816
   * the block size is likelier.
   */
  @ParameterizedTest
  @CsvSource({"64.79, block-size", "64.84, reported-not-compensated"})
  void anAllowanceCountsAsRectangular(double riser, String first) {
    Chain chain =
        rig(
            """
            host: { blocks: 1 }
            riser: { samples: %s, reported-by: the host }
            """
                .formatted(riser),
            "host");
    Comparison comparison =
        Comparison.of(Rigs.measured(64 + riser, 0.002, Rigs.RATE), chain, chain.path("all"), 1);
    assertEquals(first, comparison.explanations().get(0).cause());
  }

  /**
   * At a block of 128 'part' twice reads 3.4 samples more than 'desk' twice, at 256 9.8: two
   * readings tell causes apart when they differ by more than both their limits, 2 (allowed + 0.05).
   */
  @ParameterizedTest
  @CsvSource({"1.6, 128", "1.7, 256"})
  void causesAreToldApartWhereBothReadingsLimitsLeaveRoom(double allowed, int blockSize) {
    Chain chain =
        rig(
            """
            part: { blocks: 0.05 }
            desk: { samples: 3 }
            """,
            "part, desk");
    Comparison comparison =
        Comparison.of(Rigs.measured(6.2 + 3.1, 0.05, Rigs.RATE), chain, chain.path("all"), allowed);
    assertEquals(OptionalInt.of(blockSize), comparison.tellApart().orElseThrow().blockSize());
  }

  /** Of five readings the scale is 1.4826 (1 + 5 / 3) of their median distance, here 0.5: 1.98. */
  @ParameterizedTest
  @CsvSource({"5.5, false", "6.5, true"})
  void fewReadingsAreSetAsideOnlyFarOffTheLine(double off, boolean outlier) {
    double[] offs = {0, 0.5, -0.5, off, 0};
    List<SeriesReading> readings =
        List.of(
            reading(32, offs[0]),
            reading(64, offs[1]),
            reading(128, offs[2]),
            reading(256, offs[3]),
            reading(512, offs[4]));
    assertEquals(outlier, BlockSeries.fit(readings).readings().get(3).outlier());
  }

  private static SeriesReading reading(int blockSize, double off) {
    return new SeriesReading(
        blockSize,
        new Latency(2 * blockSize + off, Rigs.RATE),
        1,
        OptionalDouble.empty(),
        OptionalInt.empty());
  }
}
