package dev.loopgauge.estimate;

import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.watch.PathWatch;
import dev.loopgauge.verify.watch.WatchEvent;
import java.util.ArrayList;
import java.util.List;

/** Reference and returns that are watched as if they went by. */
public final class WatchedSound {
  private static final int BLOCK = 1024;

  private final LiveTracker tracker;
  private final List<PathWatch> watches = new ArrayList<>();
  private final List<List<WatchEvent>> events = new ArrayList<>();
  private final List<List<WindowReading>> readings = new ArrayList<>();

  /** Nothing was heard yet. */
  public WatchedSound(SampleRate rate, WatchPlan plan, int returns) {
    List<LiveTracker.Pair> pairs = new ArrayList<>();
    for (int i = 0; i < returns; i++) {
      pairs.add(new LiveTracker.Pair(0, i + 1));
      watches.add(new PathWatch(rate, plan.windowSeconds()));
      events.add(new ArrayList<>());
      readings.add(new ArrayList<>());
    }
    tracker = new LiveTracker(rate, plan, returns + 1, pairs);
  }

  /** Hears the reference and the returns. */
  public void hear(double[]... channels) {
    float[][] block = new float[channels.length][BLOCK];
    for (int from = 0; from < channels[0].length; from += BLOCK) {
      int length = Math.min(BLOCK, channels[0].length - from);
      for (int c = 0; c < channels.length; c++) {
        for (int i = 0; i < length; i++) {
          block[c][i] = (float) channels[c][from + i];
        }
      }
      tracker.add(block, length);
      while (tracker.isDue()) {
        take(tracker.next());
      }
    }
  }

  private void take(List<WindowReading> windows) {
    for (int i = 0; i < windows.size(); i++) {
      int path = i;
      readings.get(i).add(windows.get(i));
      events
          .get(i)
          .addAll(
              watches
                  .get(i)
                  .next(
                      windows.get(i),
                      (from, to, before, after) -> tracker.changed(path, from, to, before, after)));
    }
  }

  /** No more sound comes. */
  public void finish() {
    for (int i = 0; i < watches.size(); i++) {
      events.get(i).addAll(watches.get(i).finish());
    }
  }

  /** What was told of a path, counted from 0. */
  public List<WatchEvent> events(int path) {
    return events.get(path);
  }

  /** The windows of a path. */
  public List<WindowReading> readings(int path) {
    return readings.get(path);
  }

  /** Its watch. */
  public PathWatch watch(int path) {
    return watches.get(path);
  }
}
