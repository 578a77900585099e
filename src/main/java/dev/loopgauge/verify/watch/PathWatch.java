package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Watches one path, window by window. */
public final class PathWatch {
  private final DelayWatch delay;
  private final LevelWatch level;
  private final PolarityWatch polarity = new PolarityWatch();
  private final LossWatch loss = new LossWatch();
  private final ReferenceWatch reference = new ReferenceWatch();
  private Optional<FollowedDelay> last = Optional.empty();
  private Optional<WindowReading> window = Optional.empty();

  /**
   * Nothing was heard yet.
   *
   * @param windowSeconds how long windows are
   */
  public PathWatch(SampleRate rate, double windowSeconds) {
    this.delay = new DelayWatch(rate, windowSeconds);
    this.level = new LevelWatch(windowSeconds);
  }

  /**
   * Takes the next window.
   *
   * @param dating looks into the sound around it
   * @return what starts or ends by it
   */
  public List<WatchEvent> next(WindowReading next, Dating dating) {
    window = Optional.of(next);
    List<WatchEvent> events = new ArrayList<>();
    reference.next(next).ifPresent(events::add);
    if (next.delay().isPresent()) {
      FollowedDelay read = next.delay().get();
      last = next.delay();
      events.addAll(delay.next(next, read, dating));
      polarity.next(next, read.inverted()).ifPresent(events::add);
    }
    for (WatchEvent event : events) {
      loss.changed(event.atSeconds(), next.lengthSeconds(), laterBySeconds(event));
    }
    events.addAll(loss.next(next, delay.isOpen() || polarity.isOpen()));
    level.next(next).ifPresent(events::add);
    return events;
  }

  private static double laterBySeconds(WatchEvent event) {
    return event instanceof WatchEvent.Step step ? step.change().seconds() : 0;
  }

  /** What was still to be told when the watch ended. */
  public List<WatchEvent> finish() {
    return loss.finish();
  }

  /** How the path is doing; empty before the first window. */
  public Optional<PathStatus> status() {
    return window.map(
        now ->
            new PathStatus(
                state(now),
                now.delay(),
                last,
                delay.drift(),
                delay.hasMoved()
                    || delay.drift().isPresent()
                    || polarity.hasMoved()
                    || level.hasMoved()));
  }

  private PathStatus.State state(WindowReading now) {
    if (now.delay().isPresent()) {
      return PathStatus.State.READ;
    }
    if (now.interrupted()) {
      return PathStatus.State.INTERRUPTED;
    }
    if (reference.isDead()) {
      return PathStatus.State.NO_REFERENCE;
    }
    if (loss.isSilent()) {
      return PathStatus.State.LOST_SOUND;
    }
    if (now.clipped()) {
      return PathStatus.State.CLIPPED;
    }
    return now.sentDbfs() < WindowReading.SILENCE_DBFS
        ? PathStatus.State.NO_PROGRAMME
        : PathStatus.State.NOT_ENOUGH;
  }
}
