package dev.loopgauge.estimate;

import dev.loopgauge.estimate.drift.ChangeDate;
import dev.loopgauge.estimate.drift.Following;
import dev.loopgauge.estimate.drift.WindowDelay;
import dev.loopgauge.estimate.integrity.LostSound;
import dev.loopgauge.estimate.reading.InParallel;
import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.RecentSound;
import dev.loopgauge.estimate.reading.Window;
import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.ChangeTime;
import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.estimate.spectrum.OctavePower;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
  private final List<Pair> pairs;
  private final List<RecentSound> channels;
  private final List<Following> followings;
  private final List<List<Band>> heardBands;
  private final List<Following.Look> looks = new ArrayList<>();
  private final LostStretches lost;
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
    this.pairs = List.copyOf(pairs);
    int held = plan.held(rate, SPARE_SECONDS);
    this.lost = new LostStretches(held);
    this.channels =
        IntStream.range(0, channels).mapToObj(i -> new RecentSound(rate, held)).toList();
    this.heardBands = new ArrayList<>(Collections.nCopies(pairs.size(), List.of()));
    this.followings =
        pairs.stream().map(p -> new Following(window, plan.maxDelaySeconds(), true)).toList();
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
    if (!looks.isEmpty()) {
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
    return work(pairs.size()).orElseThrow();
  }

  /**
   * Reads the next window of some more paths, so that a machine that is busy can take in sound
   * between.
   *
   * @param paths how many, 1 or more
   * @return once the window was read of the last path, one reading for each pair in their order;
   *     none where the sound was overwritten by what came in meanwhile
   */
  public Optional<List<WindowReading>> work(int paths) {
    int from = looks.size();
    int to = Math.min(pairs.size(), from + paths);
    looks.addAll(InParallel.map(from, to, i -> look(i, nextAt)));
    return to < pairs.size() ? Optional.empty() : Optional.of(readings());
  }

  private List<WindowReading> readings() {
    List<WindowReading> readings = new ArrayList<>();
    for (int i = 0; i < looks.size(); i++) {
      readings.add(reading(i, nextAt, looks.get(i)));
    }
    boolean whole = holds(nextAt);
    for (int i = 0; i < looks.size() && whole; i++) {
      followings.get(i).next(looks.get(i), nextAt);
      if (looks.get(i).found().isPresent()) {
        heardBands.set(i, looks.get(i).found().get().besides().bands());
      }
    }
    looks.clear();
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

  private Following.Look look(int path, long at) {
    if (isInterrupted(path, at)) {
      return new Following.Look(Optional.empty(), false);
    }
    Pair pair = pairs.get(path);
    long base = base(at);
    return followings
        .get(path)
        .look(
            channels.get(pair.reference()).since(base),
            channels.get(pair.returned()).since(base),
            (int) (at - base),
            at);
  }

  /** Whether frames were lost that the window's sound or its late copy would lie in. */
  private boolean isInterrupted(int path, long at) {
    double lag = followings.get(path).lastLag().orElse(0.0);
    return lost.touch(
        at + (long) Math.min(0, lag), at + window + (long) Math.ceil(Math.max(0, lag)));
  }

  private WindowReading reading(int path, long at, Following.Look look) {
    Pair pair = pairs.get(path);
    return new WindowReading(
        seconds(at),
        seconds(at + window),
        loudness(pair.reference(), at),
        loudness(pair.returned(), at),
        look.found().isPresent() ? OptionalDouble.empty() : due(path, at),
        isInterrupted(path, at),
        look.clipped(),
        look.found().map(found -> followed(found, at)));
  }

  private FollowedDelay followed(WindowDelay.Found found, long at) {
    List<MissingSound> missing = new ArrayList<>();
    for (LostSound.Gap gap : found.besides().gaps()) {
      missing.add(
          new MissingSound(Math.max(0, seconds(at + gap.from())), 1000 * seconds(gap.length())));
    }
    return new FollowedDelay(
        found.at((at + window / 2.0) / rate.hertz(), rate),
        found.levelDb(),
        found.gain() < 0,
        found.besides().bands(),
        missing);
  }

  private double loudness(int channel, long at) {
    return Decibels.ofPower(Loudness.of(windowOf(channel, at)).energy() / window);
  }

  private Samples windowOf(int channel, long at) {
    long base = base(at);
    return new Window(channels.get(channel).since(base), (int) (at - base), window);
  }

  /** How loud the return should be by what the path passed when it was last read. */
  private OptionalDouble due(int path, long at) {
    List<Band> bands = heardBands.get(path);
    if (bands.isEmpty()) {
      return OptionalDouble.empty();
    }
    double power =
        OctavePower.passed(
            windowOf(pairs.get(path).reference(), at),
            bands.stream().mapToDouble(Band::centreHz).toArray(),
            bands.stream().mapToDouble(Band::levelDb).toArray());
    return OptionalDouble.of(Decibels.ofPower(power));
  }

  private double seconds(long frames) {
    return (double) frames / rate.hertz();
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
    Pair pair = pairs.get(path);
    long base = channels.get(0).from() + reach / 2;
    long from = Math.max(base, Math.round(fromSeconds * rate.hertz()));
    long to = Math.min(heard(), Math.round(toSeconds * rate.hertz()));
    if (from >= to || lost.touch(from, to)) {
      return Optional.empty();
    }
    ChangeDate date =
        new ChangeDate(
            channels.get(pair.reference()).since(base), channels.get(pair.returned()).since(base));
    ChangeDate.Found found = date.between((int) (from - base), (int) (to - base), before, after);
    return Optional.of(new ChangeTime(seconds(base + found.at()), seconds(found.within())));
  }
}
