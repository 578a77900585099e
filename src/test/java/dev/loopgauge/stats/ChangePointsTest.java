package dev.loopgauge.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChangePointsTest {
  private static List<Segment> segments(int fewestBefore, double spread, double... values) {
    double[] spreads = new double[values.length];
    Arrays.fill(spreads, spread);
    return new ChangePoints(0.5, fewestBefore).segments(values, spreads);
  }

  @Test
  void partsWhereTheLevelStepsAndStays() {
    List<Segment> segments = segments(0, 0.01, 10, 10, 10, 74, 74, 74, 10);
    assertEquals(List.of(new Segment(0, 3), new Segment(3, 7)), segments);
    assertEquals(74, segments.get(1).level(new double[] {10, 10, 10, 74, 74, 74, 10}));
  }

  @Test
  void oneValueThatStandsOutIsNoStep() {
    assertEquals(List.of(new Segment(0, 6)), segments(0, 0.01, 10, 10, 10, 74, 10, 10));
  }

  @ParameterizedTest
  @CsvSource({"0.49, 0.1, 1", "0.51, 0.1, 2", "1.04, 0.3, 1", "1.06, 0.3, 2"})
  void aStepIsMoreThanTheLeastAndThanTheScatter(double step, double spread, int segments) {
    assertEquals(segments, segments(0, spread, 0, 0, 0, 0, step, step, step, step).size());
  }

  @Test
  void aLastValueCountsAsStepOnlyAfterFew() {
    assertEquals(2, segments(3, 0.01, 10, 10, 74).size());
    assertEquals(1, segments(3, 0.01, 10, 10, 10, 74).size());
    assertEquals(1, segments(0, 0.01, 10, 74).size());
  }

  @Test
  void followsASlowDriftWithoutAStep() {
    double[] values = new double[100];
    Arrays.setAll(values, i -> 0.08 * i);
    assertEquals(1, segments(0, 0.01, values).size());
  }
}
