package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.ChangeTime;
import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Step;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.watch.Steady.Move;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Tells steps, drifts and groups of a path's delay. */
final class DelayWatch {
  /** What a delay is off at least, however clean, in samples. */
  private static final double FLOOR = 0.01;

  private final SampleRate rate;
  private final Steady level;
  private final Sliding sliding;
  private final ToAndFro groups;
  private final Moves moves = new Moves(Step.LEAST_SAMPLES);
  private Optional<Value> offSince = Optional.empty();
  private Optional<ChangeTime> dated = Optional.empty();

  /**
   * Nothing was read yet.
   *
   * @param windowSeconds how long windows are
   */
  DelayWatch(SampleRate rate, double windowSeconds) {
    this.rate = rate;
    this.level = new Steady(Step.LEAST_SAMPLES, FalseAlarms.perTest(windowSeconds, 1));
    this.sliding = new Sliding(Step.LEAST_SAMPLES, windowSeconds, rate.hertz());
    this.groups = new ToAndFro(Step.LEAST_SAMPLES);
  }

  /** The drift that goes on, where there is one. */
  Optional<ClockDrift> drift() {
    return sliding.drift();
  }

  /** Whether the delay is off, and nobody knows yet whether it stays so. */
  boolean isOpen() {
    return offSince.isPresent();
  }

  /** Whether the delay is another one than when the watch began. */
  boolean hasMoved() {
    return moves.areOpen();
  }

  /** Takes the next delay. */
  List<WatchEvent> next(WindowReading window, FollowedDelay read, Dating dating) {
    Value value = value(window, read);
    boolean near = level.settled().isEmpty() || level.isNear(value);
    double usual = level.settled().isEmpty() ? value.value() : level.at(value.at());
    if (near) {
      offSince = Optional.empty();
      dated = Optional.empty();
    } else {
      offSince = offSince.or(() -> Optional.of(value));
      dated = Optional.of(dated(offSince.get(), usual, value, dating));
    }
    List<WatchEvent> events = new ArrayList<>();
    groups
        .next(value)
        .ifPresent(
            change ->
                events.add(
                    new WatchEvent.Groups(
                        change.phase(), value.from(), late(change.usual()), late(change.other()))));
    level.next(value).ifPresent(move -> events.add(step(move)));
    sliding.next(level).ifPresent(change -> events.add(drift(change, value)));
    return events;
  }

  /**
   * Dated anew with each window, as long as its sound is there: the first one off holds some of the
   * sound before, so that its delay may be neither. Where the programme paused the delay may have
   * changed at any time in the pause.
   */
  private ChangeTime dated(Value off, double before, Value after, Dating dating) {
    double kept = Steady.last(level.settled(), 1).get(0).from();
    double earliest = Math.min(2 * off.from() - off.to(), kept);
    return dating
        .changed(earliest, after.to(), before, after.value())
        .or(() -> dated)
        .orElse(ChangeTime.between(earliest, off.to()));
  }

  private static Value value(WindowReading window, FollowedDelay read) {
    TrackPoint point = read.atCentre();
    double noise = point.uncertaintySamples() / Measurement.COVERAGE_FACTOR;
    return new Value(
        window.fromSeconds(),
        window.toSeconds(),
        point.atSeconds(),
        point.delay().samples(),
        Math.hypot(noise, FLOOR),
        Optional.empty());
  }

  private WatchEvent step(Move move) {
    Value first = move.first();
    ChangeTime when = dated.orElse(ChangeTime.between(first.from(), first.to()));
    offSince = Optional.empty();
    dated = Optional.empty();
    return new WatchEvent.Step(
        moves.phase(move),
        when.atSeconds(),
        when.withinSeconds(),
        late(move.from()),
        late(move.to()),
        move.uncertainty());
  }

  private WatchEvent drift(Sliding.Change change, Value now) {
    if (change.starts()) {
      moves.forget();
    }
    return new WatchEvent.Drift(
        change.starts() ? Phase.STARTS : Phase.ENDS,
        change.atSeconds(),
        change.drift(),
        late(now.value()));
  }

  private Latency late(double samples) {
    return new Latency(samples, rate);
  }
}
