package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.result.ChangeTime;
import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.estimate.result.WindowReading;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class LiveTrackerTest {
  private static final int RATE = Programme.RATE.hertz();
  private static final int BLOCK = 160;
  private static final List<LiveTracker.Pair> ONE = List.of(new LiveTracker.Pair(0, 1));

  private static float[] rounded(double[] samples) {
    float[] rounded = new float[samples.length];
    for (int i = 0; i < samples.length; i++) {
      rounded[i] = (float) samples[i];
    }
    return rounded;
  }

  private static double[] exact(float[] samples) {
    double[] exact = new double[samples.length];
    for (int i = 0; i < samples.length; i++) {
      exact[i] = samples[i];
    }
    return exact;
  }

  /** All windows of one path, as their sound comes in. */
  private static List<WindowReading> heard(LiveTracker tracker, float[] sent, float[] back) {
    List<WindowReading> readings = new ArrayList<>();
    float[][] block = new float[2][BLOCK];
    for (int from = 0; from < sent.length; from += BLOCK) {
      int length = Math.min(BLOCK, sent.length - from);
      System.arraycopy(sent, from, block[0], 0, length);
      System.arraycopy(back, from, block[1], 0, length);
      tracker.add(block, length);
      while (tracker.isDue()) {
        readings.addAll(tracker.next());
      }
    }
    while (tracker.isLeft()) {
      readings.addAll(tracker.next());
    }
    return readings;
  }

  private static List<TrackPoint> points(List<WindowReading> readings) {
    return readings.stream().flatMap(r -> r.delay().stream()).map(d -> d.point()).toList();
  }

  @Test
  void givesThePointsThatFollowGives() {
    DoubleUnaryOperator delay =
        n -> n < 6.3 * RATE ? 120.25 : n < 10 * RATE ? 2184.25 : 300 + 30e-6 * n;
    double[] programme = Programme.of(24, 41);
    float[] sent = rounded(programme);
    float[] back = rounded(Programme.late(programme, delay, 42));
    List<TrackPoint> followed =
        new Tracker(1, 0.5)
            .follow(Programme.signal(exact(sent)), Programme.signal(exact(back)), share -> {})
            .points();
    LiveTracker live = new LiveTracker(Programme.RATE, new WatchPlan(1, 1, 0.5), 2, ONE);
    assertEquals(followed, points(heard(live, sent, back)));
    assertTrue(followed.size() > 20, followed::toString);
  }

  @Test
  void slidesByLessThanAWindow() {
    double[] programme = Programme.of(6, 43);
    float[] sent = rounded(programme);
    float[] back = rounded(Programme.late(programme, n -> 77, 44));
    LiveTracker live = new LiveTracker(Programme.RATE, new WatchPlan(1, 0.25, 0.2), 2, ONE);
    List<WindowReading> readings = heard(live, sent, back);
    assertEquals(21, readings.size());
    for (int i = 0; i < readings.size(); i++) {
      assertEquals(0.25 * i, readings.get(i).fromSeconds(), 1e-9);
      assertEquals(77, readings.get(i).delay().orElseThrow().point().delay().samples(), 0.05);
    }
  }

  /** A window of 1 s whose first third alone has sound, of a delay that slides by 0.24 samples. */
  @Test
  void datesADelayToWhereTheSoundIs() {
    double perSample = 30e-6;
    double[] programme = Programme.of(8, 46);
    Arrays.fill(programme, (int) (4.35 * RATE), 6 * RATE, 0);
    float[] sent = rounded(programme);
    float[] back = rounded(Programme.late(programme, n -> 80 + perSample * n, 47));
    LiveTracker live = new LiveTracker(Programme.RATE, new WatchPlan(1, 1, 0.2), 2, ONE);
    FollowedDelay read = heard(live, sent, back).get(4).delay().orElseThrow();
    TrackPoint atCentre = read.atCentre();
    assertEquals(4.17, atCentre.atSeconds(), 0.08);
    double slid = perSample * RATE * atCentre.atSeconds();
    assertEquals(80 + slid, atCentre.delay().samples(), 0.02);
    assertEquals(4.5, read.point().atSeconds(), 1e-9);
    double offMiddle = 80 + perSample * RATE * 4.5 - read.point().delay().samples();
    assertTrue(offMiddle > 0.05, "the middle says nothing of where the sound was: " + read);
  }

  @Test
  void leavesOutWindowsInWhichFramesWereLost() {
    double[] programme = Programme.of(8, 45);
    float[] sent = rounded(programme);
    LiveTracker live = new LiveTracker(Programme.RATE, new WatchPlan(1, 1, 0.2), 2, ONE);
    float[][] first = {sent, sent};
    live.add(first, 3 * RATE);
    live.addLost(100);
    List<WindowReading> readings = heard(live, sent, sent);
    assertTrue(readings.get(3).interrupted());
    assertTrue(readings.get(3).delay().isEmpty());
    assertFalse(readings.get(4).interrupted());
    assertEquals(0, readings.get(4).delay().orElseThrow().point().delay().samples(), 0.01);
  }

  @Test
  void datesAChangeToMilliseconds() {
    double[] programme = Programme.of(6, 47);
    float[] sent = rounded(programme);
    float[] back = rounded(Programme.late(programme, n -> n < 3.4 * RATE ? 77 : 78, 48));
    LiveTracker live = new LiveTracker(Programme.RATE, new WatchPlan(1, 1, 0.2), 2, ONE);
    live.add(new float[][] {sent, back}, sent.length);
    ChangeTime time = live.changed(0, 2.5, 4.5, 77, 78).orElseThrow();
    assertEquals(3.4, time.atSeconds(), time.withinSeconds());
    assertTrue(time.withinSeconds() < 0.1, time::toString);
    assertTrue(live.changed(0, 7, 8, 77, 78).isEmpty(), "that was not heard");
  }
}
