package dev.loopgauge.metrics;

import dev.loopgauge.job.WatchListener;
import dev.loopgauge.metrics.PathFigures.Delay;
import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.report.watch.WatchedDelay;
import dev.loopgauge.verify.watch.WatchEvent;
import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/** Collects what a watch says and tells what of it is true at the moment of asking; any thread. */
final class WatchFigures implements WatchListener {
  /**
   * So long a delay counts as read now. A watch looks at each path once a second where the machine
   * can: after five looks that did not come, it has stopped or lost its sound.
   */
  static final long CURRENT_NANOS = TimeUnit.SECONDS.toNanos(5);

  /** What an event can be of; the other lines are no events. */
  static final List<WatchLine.Event> KINDS =
      List.of(
          WatchLine.Event.STEP,
          WatchLine.Event.DRIFT,
          WatchLine.Event.LOST_SOUND,
          WatchLine.Event.POLARITY,
          WatchLine.Event.LEVEL,
          WatchLine.Event.GROUPS,
          WatchLine.Event.REFERENCE);

  /** One path. */
  private static final class Path {
    final Map<WatchLine.Event, Long> events = new EnumMap<>(WatchLine.Event.class);
    Optional<Delay> delay = Optional.empty();
    Optional<Long> readAt = Optional.empty();

    Path() {
      KINDS.forEach(kind -> events.put(kind, 0L));
    }
  }

  private final LongSupplier nanos;
  private final Map<String, Path> paths = new LinkedHashMap<>();

  /**
   * Nothing was heard yet.
   *
   * @param nanos a clock in nanoseconds
   */
  WatchFigures(LongSupplier nanos) {
    this.nanos = nanos;
  }

  @Override
  public synchronized void starts(List<String> names, String announcement) {
    names.forEach(name -> paths.put(name, new Path()));
  }

  @Override
  public synchronized void states(List<WatchLine> states) {
    long now = nanos.getAsLong();
    for (WatchLine state : states) {
      Path path = paths.get(state.path().orElseThrow());
      path.delay = delay(state.read());
      if (path.delay.isPresent()) {
        path.readAt = Optional.of(now);
      }
    }
  }

  private static Optional<Delay> delay(WatchedDelay read) {
    return read.delayMs()
        .map(ms -> new Delay(seconds(ms), seconds(read.uncertaintyMs().orElseThrow())));
  }

  private static double seconds(BigDecimal ms) {
    return ms.movePointLeft(3).doubleValue();
  }

  @Override
  public synchronized void happens(WatchLine event) {
    if (event.phase().equals(Optional.of(WatchEvent.Phase.STARTS))) {
      event
          .path()
          .map(paths::get)
          .ifPresent(path -> path.events.merge(event.event(), 1L, Long::sum));
    }
  }

  @Override
  public void notes(String sentence) {
    // Figures alone are served.
  }

  /** What is true now of each path, in the order of the chain file. */
  synchronized List<PathFigures> now() {
    long now = nanos.getAsLong();
    return paths.entrySet().stream().map(path -> of(path.getKey(), path.getValue(), now)).toList();
  }

  private static PathFigures of(String name, Path path, long now) {
    Optional<Long> age = path.readAt.map(readAt -> now - readAt);
    return new PathFigures(
        name,
        path.delay.filter(read -> age.orElseThrow() <= CURRENT_NANOS),
        age.map(nanos -> nanos / 1e9),
        new EnumMap<>(path.events));
  }
}
