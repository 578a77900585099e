package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.drift.TrackLine;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Step;
import dev.loopgauge.estimate.result.Track;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("campaign")
class TrackerTest {
  private static final double WINDOW = 2;
  private static final double SECONDS = 40;
  private static final int RATE = Programme.RATE.hertz();

  private static Track follow(double[] sent, double[] back) {
    return new Tracker(WINDOW, 0.5)
        .follow(Programme.signal(sent), Programme.signal(back), share -> {});
  }

  private static Track follow(DoubleUnaryOperator delay, long seed) {
    double[] sent = Programme.of(SECONDS, seed);
    return follow(sent, Programme.late(sent, delay, seed + 1));
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13})
  void datesStepWithinOneWindow(long seed) {
    double at = new SplittableRandom(seed).nextDouble(7, 33);
    Track track = follow(n -> n < at * RATE ? 120.25 : 184.25, seed);
    assertEquals(1, track.steps().size(), () -> "seed " + seed + ": " + track);
    Step step = track.steps().get(0);
    assertEquals(at, step.atSeconds(), WINDOW, () -> "seed " + seed);
    assertEquals(120.25, step.fromSamples(), 0.02, () -> "seed " + seed);
    assertEquals(184.25, step.toSamples(), 0.02, () -> "seed " + seed);
    assertEquals(0, track.driftPpm().orElseThrow(), 0.5, () -> "seed " + seed);
    assertEquals(FindingCode.DROPOUT, track.findings().get(0).code());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-400, -30, 2, 50, 1000})
  void tellsSlopeFromStep(double ppm) {
    double perSample = ppm / (1e6 + ppm);
    Track track = follow(n -> 600 + perSample * n, 21);
    assertEquals(List.of(), track.steps(), track::toString);
    assertEquals(ppm, track.driftPpm().orElseThrow(), 0.05 + 1e-4 * Math.abs(ppm));
    assertEquals(FindingCode.CLOCKS_NOT_LOCKED, track.findings().get(0).code());
    for (TrackPoint point : track.points()) {
      double there = 600 + ppm * 1e-6 * (point.atSeconds() * RATE + 600);
      assertEquals(there, point.delay().samples(), 0.05, point::toString);
    }
  }

  @Test
  void tellsStepOnSlope() {
    double perSample = 40e-6;
    Track track = follow(n -> 80 + perSample * n + (n < 20.6 * RATE ? 0 : -64), 31);
    assertEquals(1, track.steps().size(), track::toString);
    assertEquals(-64, track.steps().get(0).changeSamples(), 0.05);
    assertEquals(20.6, track.steps().get(0).atSeconds(), WINDOW);
    assertEquals(40, track.driftPpm().orElseThrow(), 0.5);
  }

  @Test
  void steadyPathHasNeitherStepNorDrift() {
    Track track = follow(n -> 77.5, 41);
    assertEquals(20, track.points().size());
    assertEquals(List.of(), track.steps());
    assertEquals(List.of(), track.findings());
    for (TrackPoint point : track.points()) {
      assertEquals(77.5, point.delay().samples(), 0.01, point::toString);
    }
  }

  /**
   * A window cuts through the sound, and knows as much as if it didn't: of 240 errors 228 are due
   * inside, give or take 7.
   */
  @ParameterizedTest
  @ValueSource(doubles = {10, 30})
  void theUncertaintyIsThatOfTheNoise(double snrDb) {
    int inside = 0;
    int all = 0;
    double wide = 0;
    for (int seed = 0; seed < 15; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      Signal speech = ShowSound.speech(new SampleRate(16_000), 16, random.split());
      DelayTrial trial = new DelayTrial(speech);
      double delay = random.nextDouble(200, 500);
      double noise = trial.noise(snrDb, 1);
      Reading reading = trial.reading(delay, 1, noise, random);
      Track track = new Tracker(1, 0.1).follow(reading.reference(), reading.ret(), share -> {});
      for (TrackPoint point : track.points()) {
        double off = Math.abs(point.delay().samples() - delay);
        int from = (int) (16_000 * (point.atSeconds() - 0.5));
        double bound = new DelayTrial(speech.slice(from, from + 16_000)).bound(noise, 1);
        inside += off <= point.uncertaintySamples() ? 1 : 0;
        wide += point.uncertaintySamples() / (2 * bound);
        all++;
      }
    }
    assertEquals(240, all);
    assertTrue(inside >= 0.9 * all, inside + " of " + all + " inside");
    assertEquals(1, wide / all, 0.15);
  }

  @Test
  void tellsWindowsThatAreClippedAndKeepsTheirDelay() {
    double[] sent = Programme.of(SECONDS, 61);
    double[] back = Programme.late(sent, n -> 90, 62);
    for (int n = 10 * RATE; n < 14 * RATE; n++) {
      back[n] = Math.max(-1, Math.min(1, 30 * back[n]));
    }
    Track track = follow(sent, back);
    for (TrackPoint point : track.points()) {
      assertEquals(90, point.delay().samples(), 2 * point.uncertaintySamples(), track::toString);
    }
    assertEquals("the return is clipped in 3 windows", track.findings().get(0).text());
    assertEquals(FindingCode.CLIPPED, track.findings().get(0).code());
  }

  @Test
  void leavesOutWindowsWithoutSound() {
    double[] sent = Programme.of(SECONDS, 51);
    double[] back = Programme.late(sent, n -> 90, 52);
    Arrays.fill(sent, 10 * RATE, 16 * RATE, 0);
    Arrays.fill(back, 24 * RATE, 28 * RATE, 0);
    Track track = follow(sent, back);
    assertEquals(5, track.leftOut(), track::toString);
    assertEquals(15, track.points().size());
    assertEquals(List.of(), track.steps());
  }

  @Test
  void oneWindowThatStandsOutIsNoStep() {
    List<TrackPoint> points = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      points.add(new TrackPoint(i, new Latency(i == 5 ? 164 : 100, Programme.RATE), 0.01));
    }
    assertEquals(List.of(), new TrackLine(1, points).track(0, 0).steps());
  }

  @Test
  void refusesReturnWithNothingInCommon() {
    Track track = follow(Programme.of(10, 61), Programme.of(10, 62));
    assertEquals(List.of(), track.points());
    assertEquals(5, track.leftOut());
    assertTrue(track.findings().get(0).refuses());
  }

  @Test
  void findsReturnThatLeads() {
    double[] early = Programme.of(10, 71);
    double[] late = Programme.late(early, n -> 333, 72);
    Track track = follow(late, early);
    for (TrackPoint point : track.points()) {
      assertEquals(-333, point.delay().samples(), 0.01, point::toString);
    }
  }

  @Test
  void tellsHowMuchIsDone() {
    double[] sent = Programme.of(10, 81);
    List<Double> shares = new ArrayList<>();
    new Tracker(WINDOW, 0.5).follow(Programme.signal(sent), Programme.signal(sent), shares::add);
    assertEquals(0, shares.get(0));
    assertEquals(1, shares.get(shares.size() - 1));
  }

  @Test
  void refusesWindowsOutOfRange() {
    assertThrows(IllegalArgumentException.class, () -> new Tracker(0.4, 1));
    assertThrows(IllegalArgumentException.class, () -> new Tracker(31, 1));
    assertThrows(IllegalArgumentException.class, () -> new Tracker(10, 0));
  }
}
