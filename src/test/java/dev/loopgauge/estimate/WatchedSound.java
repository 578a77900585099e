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
  private final List<List<Told>> events = new ArrayList<>();
  private final List<List<WindowReading>> readings = new ArrayList<>();

  /**
   * An event.
   *
   * @param bySeconds when the window ended by which it was told; infinite at the end of all
   */
  public record Told(WatchEvent event, double bySeconds) {}

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

  /** Hears a programme, and what each path makes of it, without holding more than that. */
  void hear(double[] programme, List<PathSound> paths) {
    float[][] block = new float[paths.size() + 1][BLOCK];
    for (int from = 0; from < programme.length; from += BLOCK) {
      int length = Math.min(BLOCK, programme.length - from);
      for (int i = 0; i < length; i++) {
        block[0][i] = (float) programme[from + i];
        for (int p = 0; p < paths.size(); p++) {
          block[p + 1][i] = (float) paths.get(p).at(programme, from + i);
        }
      }
      take(block, length);
    }
  }

  private void take(float[][] block, int length) {
    tracker.add(block, length);
    while (tracker.isDue()) {
      take(tracker.next());
    }
  }

  private void take(List<WindowReading> windows) {
    for (int i = 0; i < windows.size(); i++) {
      int path = i;
      WindowReading window = windows.get(i);
      readings.get(i).add(window);
      for (WatchEvent event :
          watches
              .get(i)
              .next(
                  window,
                  (from, to, before, after) -> tracker.changed(path, from, to, before, after))) {
        events.get(i).add(new Told(event, window.toSeconds()));
      }
    }
  }

  /** No more sound comes. */
  public void finish() {
    for (int i = 0; i < watches.size(); i++) {
      for (WatchEvent event : watches.get(i).finish()) {
        events.get(i).add(new Told(event, Double.POSITIVE_INFINITY));
      }
    }
  }

  /** What was told of a path, counted from 0. */
  public List<WatchEvent> events(int path) {
    return told(path).stream().map(Told::event).toList();
  }

  /** The same, with when it was told. */
  List<Told> told(int path) {
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
