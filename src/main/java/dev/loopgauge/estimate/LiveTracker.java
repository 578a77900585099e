package dev.loopgauge.estimate;

import dev.loopgauge.estimate.reading.InParallel;
import dev.loopgauge.estimate.reading.RecentSound;
import dev.loopgauge.estimate.result.ChangeTime;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Follows the delays of many returns through sound that comes block by block, in memory that
 * doesn't grow. It is the machinery of {@link Tracker}: of the same sound and windows it gives the
 * same points, one by one as their windows are complete.
 *
 * <p>One thread adds sound, another one may read windows meanwhile.
 */
public final class LiveTracker {
  /** How much sound may come in while windows are read, in seconds. */
  private static final double SPARE_SECONDS = 4;

  /**
   * One path's channels.
   *
   * @param reference the place of the reference among the channels, from 0
   * @param returned the place of the return
   */
  public record Pair(int reference, int returned) {}

  private final SampleRate rate;
  private final int window;
  private final int step;
  private final int reach;
  private final List<RecentSound> channels;
  private final List<LivePath> paths;
  private final List<LivePath.Heard> heard = new ArrayList<>();
  private final LostSegments lost;
  private long nextAt;

  /**
   * A tracker that has heard nothing yet.
   *
   * @param channels how many channels come in
   */
  public LiveTracker(SampleRate rate, WatchPlan plan, int channels, List<Pair> pairs) {
    this.rate = rate;
    this.window = plan.window(rate);
    this.step = plan.step(rate);
    this.reach = plan.reach(rate);
    int held = plan.held(rate, SPARE_SECONDS);
    this.lost = new LostSegments(held);
    this.channels =
        IntStream.range(0, channels).mapToObj(i -> new RecentSound(rate, held)).toList();
    this.paths = pairs.stream().map(pair -> path(plan, pair)).toList();
  }

  private LivePath path(WatchPlan plan, Pair pair) {
    return new LivePath(
        rate, plan, channels.get(pair.reference()), channels.get(pair.returned()), lost);
  }

  /**
   * Adds what was heard next.
   *
   * @param block one array for each channel
   * @param length how many frames it has
   */
  public void add(float[][] block, int length) {
    for (int i = 0; i < channels.size(); i++) {
      channels.get(i).add(block[i], length);
    }
  }

  /** Adds silence in place of frames that were lost; windows with it are not read. */
  public void addLost(long frames) {
    lost.add(heard(), frames);
    for (RecentSound channel : channels) {
      channel.addSilence(frames);
    }
  }

  /** How many frames were heard or lost so far. */
  public long heard() {
    return channels.get(channels.size() - 1).to();
  }

  /** Whether a window is complete with all that may be looked at around it. */
  public boolean isDue() {
    return nextAt + window + reach <= heard();
  }

  /**
   * Leaves out windows that are due but would be read too late; the last one stays, and so does one
   * that is being read.
   */
  public void catchUp() {
    if (!heard.isEmpty()) {
      return;
    }
    long late = (heard() - nextAt - window - reach) / step;
    nextAt += Math.max(0, late) * step;
  }

  /** Whether a window is complete though not all that could be looked at around it: at the end. */
  public boolean isLeft() {
    return nextAt + window <= heard();
  }

  /**
   * Reads the next window of every path.
   *
   * @return as {@link #work}
   */
  public List<WindowReading> next() {
    return work(paths.size()).orElseThrow();
  }

  /**
   * Reads the next window of some more paths, so that a machine that is busy can take in sound
   * between.
   *
   * @param some how many, 1 or more
   * @return once the window was read of the last path, one reading for each pair in their order;
   *     none where the sound was overwritten by what came in meanwhile
   */
  public Optional<List<WindowReading>> work(int some) {
    int from = heard.size();
    int to = Math.min(paths.size(), from + some);
    heard.addAll(InParallel.map(from, to, i -> paths.get(i).hear(nextAt, base(nextAt))));
    return to < paths.size() ? Optional.empty() : Optional.of(readings());
  }

  private List<WindowReading> readings() {
    List<WindowReading> readings = new ArrayList<>();
    for (int i = 0; i < heard.size(); i++) {
      readings.add(paths.get(i).reading(heard.get(i), nextAt, base(nextAt)));
    }
    boolean whole = holds(nextAt);
    for (int i = 0; i < heard.size() && whole; i++) {
      paths.get(i).next(heard.get(i), nextAt);
    }
    heard.clear();
    nextAt += step;
    return whole ? readings : List.of();
  }

  /** Whether all that a window looks at is still there. */
  private boolean holds(long at) {
    return channels.get(0).from() <= base(at);
  }

  /** The frame that views on a window start with. */
  private long base(long at) {
    return Math.max(0, at - step - reach);
  }

  /**
   * When a path's delay changed; empty where its sound is gone.
   *
   * @param path the place of its pair
   * @param fromSeconds the earliest moment, from the start of the stream
   * @param toSeconds the latest moment
   * @param before the delay before, in samples
   * @param after the delay after, in samples
   */
  public Optional<ChangeTime> changed(
      int path, double fromSeconds, double toSeconds, double before, double after) {
    long base = channels.get(0).from() + reach / 2;
    long from = Math.max(0, Math.round(fromSeconds * rate.hertz()));
    long to = Math.min(heard(), Math.round(toSeconds * rate.hertz()));
    return from < base ? Optional.empty() : paths.get(path).changed(base, from, to, before, after);
  }
}
