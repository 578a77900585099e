package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.Signal;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Recordings too long to be taken as one reading. */
@Tag("campaign")
class LongRecordingTest {
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.5);
  private static final int RATE = Programme.RATE.hertz();

  private static Measurement measured(Estimate estimate) {
    return assertInstanceOf(Estimate.Found.class, estimate, estimate::toString).measurement();
  }

  @Test
  void measuresSteadyDelayThroughout() {
    double[] sent = Programme.of(60, 1);
    double[] back = Programme.late(sent, n -> 210.5, 2);
    Estimate estimate = ESTIMATOR.estimate(Programme.signal(sent), Programme.signal(back));
    assertEquals(List.of(), estimate.findings());
    assertEquals(210.5, measured(estimate).delay().samples(), 0.002);
    assertEquals(12, measured(estimate).repeats());
    assertEquals(0, measured(estimate).clockDriftPpm().orElseThrow(), 0.05);
  }

  @Test
  void takesDriftThatSmearsItOut() {
    double perSample = 200e-6;
    double[] sent = Programme.of(60, 3);
    double[] back = Programme.late(sent, n -> 100 + perSample * n, 4);
    Estimate estimate = ESTIMATOR.estimate(Programme.signal(sent), Programme.signal(back));
    Measurement m = measured(estimate);
    assertEquals(200, m.clockDriftPpm().orElseThrow(), 0.1);
    assertEquals(100 + perSample * (30 * RATE + 148), m.delay().samples(), 0.1);
    assertTrue(m.uncertaintySamples() > perSample * 60 * RATE / 2, m::toString);
    assertEquals(FindingCode.CLOCKS_NOT_LOCKED, estimate.findings().get(0).code());
  }

  @Test
  void stepIsShownAsGroupsAndDecidesNothing() {
    double[] sent = Programme.of(60, 5);
    double[] back = Programme.late(sent, n -> n < 20 * RATE ? 100 : 164, 6);
    Estimate estimate = ESTIMATOR.estimate(Programme.signal(sent), Programme.signal(back));
    assertEquals(FindingCode.DROPOUT, estimate.findings().get(0).code());
    assertTrue(measured(estimate).ambiguous());
  }

  @Test
  void readsWhereTheReferenceIsLoud() {
    double[] quiet = Programme.of(60, 7);
    for (int i = 0; i < quiet.length; i++) {
      quiet[i] *= i >= 20 * RATE && i < 40 * RATE ? 1 : 1e-3;
    }
    Segments segments = Segments.of(Programme.signal(quiet), 0.5);
    assertEquals(4, segments.count());
    assertTrue(segments.leaveOut());
    assertEquals(20 * RATE, segments.against(Programme.signal(quiet)).get(0).start());
  }

  @Test
  void leavesOutStretchesInWhichTheReturnIsSilent() {
    double[] sent = Programme.of(60, 8);
    double[] back = Programme.late(sent, n -> 50, 9);
    Arrays.fill(back, 0, 20 * RATE, 0);
    Estimate estimate = ESTIMATOR.estimate(Programme.signal(sent), Programme.signal(back));
    assertEquals(8, measured(estimate).repeats());
  }

  @Test
  void shortRecordingIsReadAsWhole() {
    Signal sent = Programme.signal(Programme.of(15, 10));
    Segments segments = Segments.of(sent, 1);
    assertEquals(1, segments.count());
    assertFalse(segments.leaveOut());
  }

  @Test
  void readsNoMoreOfAnHourThanOfTwoMinutes() {
    Segments hour = Segments.of(Programme.signal(new double[3600 * RATE]), 1);
    assertTrue(hour.count() * hour.seconds() <= 120, "%d".formatted(hour.count()));
  }
}
