package dev.loopgauge.job.live;

import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.LostFrames;
import dev.loopgauge.estimate.LiveTracker;
import dev.loopgauge.estimate.WatchPlan;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.job.StopSign;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Takes in the sound of a watch and has its windows read in between, on the thread that the sound
 * comes by. Where the machine is too slow for that, windows are left out rather than sound.
 */
final class Watching implements BlockListener {
  /** How many paths are read before the sound that waits is taken in. */
  private static final int PATHS_AT_A_TIME = 4;

  /**
   * Sound may wait for so long: half of what adapters hold ({@code BlockRing.ofTwoSeconds}), and
   * half again to spare.
   */
  private static final double WAITING_SECONDS = 0.5;

  /** A block that came so long after the last was taken in did not wait: all is taken in. */
  private static final long WAITED_NANOS = 5_000_000;

  private final SampleRate rate;
  private final LiveTracker tracker;
  private final WatchRecord record;
  private final LongSupplier nanos;
  private final StopSign stop;
  private final long limitFrames;
  private long returned;
  private long upToDate;
  private long heardThen;
  private long lostFrames;

  /**
   * Nothing was heard yet.
   *
   * @param record is given what is read
   * @param nanos a clock in nanoseconds
   * @param stop says when somebody has enough
   * @param limitFrames how much sound is enough in any case
   */
  Watching(
      SampleRate rate,
      WatchPlan plan,
      WatchedPaths watched,
      WatchRecord record,
      LongSupplier nanos,
      StopSign stop,
      long limitFrames) {
    this.rate = rate;
    this.tracker = new LiveTracker(rate, plan, watched.returns().size(), watched.pairs());
    this.record = record;
    this.nanos = nanos;
    this.stop = stop;
    this.limitFrames = limitFrames;
  }

  /** No sound comes any more. */
  void fails(String why) {
    record.fails(why);
  }

  /** No sound has come for this many seconds: no delay is read now. */
  void waits(double seconds) {
    record.waits(heardSeconds() + seconds);
  }

  /** The sound begins anew after this many seconds without any. */
  void goOnAfter(double seconds) {
    tracker.addLost(Math.max(1, Math.round(seconds * rate.hertz())));
    record.goesOn(heardSeconds(), seconds);
  }

  @Override
  public boolean block(long frame, float[][] returns, int length) {
    tracker.add(returns, length);
    long now = nanos.getAsLong();
    if (now - returned > WAITED_NANOS) {
      upToDate = now;
      heardThen = tracker.heard();
    }
    record.heard(heardSeconds());
    work();
    returned = nanos.getAsLong();
    return !stop.isAsked() && tracker.heard() < limitFrames;
  }

  @Override
  public void lost(LostFrames lost) {
    lostFrames += Math.abs(lost.frames());
    record.lost(lost);
    tracker.addLost(Math.max(1, lost.frames()));
  }

  /** Reads what is due, as long as no sound waits for too long. */
  private void work() {
    while (tracker.isDue() && waiting() < WAITING_SECONDS) {
      Optional<List<WindowReading>> readings = tracker.work(PATHS_AT_A_TIME);
      if (readings.isPresent()) {
        take(readings.get());
        tracker.catchUp();
      }
    }
  }

  /**
   * How long the sound has waited that has come but was not taken in, in seconds: by how much the
   * clock went on further than the sound since all had been taken in. Counted from then only, since
   * no two clocks agree for hours, and a busy server's stands still.
   */
  private double waiting() {
    double clock = (nanos.getAsLong() - upToDate) / 1e9;
    return clock - (double) (tracker.heard() - heardThen) / rate.hertz();
  }

  private void take(List<WindowReading> readings) {
    if (!readings.isEmpty()) {
      record.take(readings, tracker);
    }
  }

  /** Reads the windows that are complete, now that no more sound comes. */
  void finish() {
    while (tracker.isLeft()) {
      take(tracker.next());
    }
    record.finish();
  }

  /** How much sound came in, in seconds; lost sound counts. */
  double heardSeconds() {
    return (double) tracker.heard() / rate.hertz();
  }

  /** How many frames the recording lost. */
  long lostFrames() {
    return lostFrames;
  }
}
