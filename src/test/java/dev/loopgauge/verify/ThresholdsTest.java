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

  /**
   * A block of 128 and one block of 'host' more explain the reading together: 0.7 and 2.5 for a
   * second change, 3.2. 'part' twice costs 1.5 and leaves some standard uncertainties: up to 1.84
   * of them, sqrt(2 (3.2 - 1.5)), it is the likelier one.
   */
  @ParameterizedTest
  @CsvSource({"1.8, stage-twice", "1.9, block-size+extra-block"})
  void aSecondChangeCostsTwoAndAHalf(double left, String first) {
    Chain chain =
        rig(
            """
            host: { blocks: 3 }
            part: { samples: %s }
            """
                .formatted(320 - left),
            "host, part");
    Comparison comparison =
        Comparison.of(Rigs.measured(512 + 320 - left, 2, Rigs.RATE), chain, chain.path("all"), 0);
    assertEquals(first, comparison.explanations().get(0).cause());
  }

  @ParameterizedTest
  @CsvSource({"0.95, true", "1.05, false"})
  void causesTieWithinAFactorOfE(double cost, boolean ties) {
    assertEquals(ties, new Explanation("a", "b", 0, 0, cost).ties());
  }

  @ParameterizedTest
  @CsvSource({"64.45, 1", "64.55, 0", "-128.45, -2", "-128.55, 0", "0.45, 0"})
  void aDifferenceIsWholeBlocksWithinHalfASample(double off, int blocks) {
    Chain chain = rig("host: { blocks: 3 }", "host");
    Comparison comparison =
        Comparison.of(Rigs.measured(192 + off, 0.01, Rigs.RATE), chain, chain.path("all"), 0);
    assertEquals(blocks, comparison.wholeBlocks().orElse(0));
  }

  @ParameterizedTest
  @CsvSource({"2.9, false", "3.1, true", "-2.9, false", "-3.1, true"})
  void readingsLieOnALineWithinThreeStandardUncertainties(double off, boolean told) {
    SeriesFit.Fitted odd = fitted(256, off);
    assertEquals(told, notes(100, fitted(64, 0), fitted(128, 0), odd).contains("no-line"));
  }

  @ParameterizedTest
  @CsvSource({"-2.9, 0, false", "-3.1, 0, true", "-3.9, 1, false", "-4.1, 1, true"})
  void aFixedPartIsImpossibleThreeSamplesBelowWhatTheReadingsLeave(
      double fixed, double off, boolean told) {
    assertEquals(
        told, notes(fixed, fitted(64, off), fitted(128, 0), fitted(256, 0)).contains("impossible"));
  }

  private static List<String> notes(double fixed, SeriesFit.Fitted... readings) {
    return SeriesNotes.of(
            new SeriesFit(2, 0.01, 2, new Latency(fixed, Rigs.RATE), List.of(readings)))
        .stream()
        .map(SeriesNote::code)
        .toList();
  }

  private static SeriesFit.Fitted fitted(int blockSize, double off) {
    return new SeriesFit.Fitted(
        reading(blockSize, off), new Latency(2 * blockSize, Rigs.RATE), false);
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
