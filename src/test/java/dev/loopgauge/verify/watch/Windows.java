package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Windows of two seconds, one a second, as a tracker would read them. */
final class Windows {
  static final SampleRate RATE = new SampleRate(48_000);
  static final double LENGTH = 2;
  private static final Dating NONE = (from, to, before, after) -> Optional.empty();

  private final PathWatch watch = new PathWatch(RATE, LENGTH);
  private final List<WatchEvent> events = new ArrayList<>();
  private double at;

  /** Reads a delay of some samples, at a level, in the next window. */
  Windows read(double samples, double uncertainty, double levelDb, boolean inverted) {
    return take(
        -20,
        -20,
        OptionalDouble.empty(),
        delay(samples, uncertainty, levelDb, inverted, List.of()));
  }

  /** The same a number of times. */
  Windows read(int times, double samples) {
    for (int i = 0; i < times; i++) {
      read(samples, 0.02, -6, false);
    }
    return this;
  }

  /** The same with a gap. */
  Windows readWithGap(double samples, double gapAt, double ms) {
    return take(
        -20,
        -20,
        OptionalDouble.empty(),
        delay(samples, 0.02, -6, false, List.of(new MissingSound(gapAt, ms))));
  }

  /** Reads nothing in the next window. */
  Windows nothing(double sentDbfs, double heardDbfs, double dueDbfs) {
    return take(sentDbfs, heardDbfs, OptionalDouble.of(dueDbfs), Optional.empty());
  }

  private Optional<FollowedDelay> delay(
      double samples,
      double uncertainty,
      double levelDb,
      boolean inverted,
      List<MissingSound> lost) {
    return Optional.of(
        new FollowedDelay(
            new TrackPoint(at + LENGTH / 2, new Latency(samples, RATE), uncertainty),
            levelDb,
            inverted,
            List.of(new Band(1000, samples, uncertainty, levelDb, 0.1)),
            lost));
  }

  private Windows take(
      double sent, double heard, OptionalDouble due, Optional<FollowedDelay> delay) {
    events.addAll(
        watch.next(
            new WindowReading(at, at + LENGTH, sent, heard, due, false, false, delay), NONE));
    at++;
    return this;
  }

  /** When the next window starts. */
  double at() {
    return at;
  }

  List<WatchEvent> events() {
    return events;
  }

  PathStatus status() {
    return watch.status().orElseThrow();
  }
}
