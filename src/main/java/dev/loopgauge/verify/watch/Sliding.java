package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.stats.Hinge;
import dev.loopgauge.stats.Median;
import dev.loopgauge.stats.Slope;
import dev.loopgauge.stats.StraightLine;
import java.util.List;
import java.util.Optional;

/**
 * Whether a level slides, and how fast: by lines through its last values, few for a fast slide and
 * many for a slow one. A window that tells its delay badly, beside a pause, counts for little. The
 * chance of a false alarm is shared by these lines.
 */
final class Sliding {
  private static final int[] LENGTHS = {64, 32, 16, 8};
  private static final int SHORTEST = 8;

  /** How many values say what a slide goes on with. */
  private static final int GOES_ON = 16;

  private final double least;
  private final double chance;
  private final double hertz;
  private Optional<ClockDrift> told = Optional.empty();
  private Optional<ClockDrift> now = Optional.empty();

  /**
   * Nothing slides yet.
   *
   * @param least a line that rises by less, beyond what windows may lie apart, is none
   * @param secondsApart how long it is from one window with sound of its own to the next
   * @param hertz the sample rate
   */
  Sliding(double least, double secondsApart, double hertz) {
    this.least = least;
    this.chance = FalseAlarms.perTest(secondsApart, LENGTHS.length + 1);
    this.hertz = hertz;
  }

  /** A slide that starts, with its drift, or one that has ended, with what is left of it. */
  record Change(boolean starts, double atSeconds, ClockDrift drift) {}

  /** Looks at a level after its next value. */
  Optional<Change> next(Steady level) {
    takeThoseOff(level);
    for (int length : LENGTHS) {
      if (level.settled().size() >= length) {
        List<Value> values = Steady.last(level.settled(), length);
        Optional<Change> change = told.isEmpty() ? started(level, values) : ended(level, values);
        if (change.isPresent()) {
          return change;
        }
      }
    }
    if (told.isPresent() && level.settled().size() >= SHORTEST) {
      slidesOn(level, slope(Steady.last(level.settled(), GOES_ON)));
    }
    return Optional.empty();
  }

  /** The drift that goes on, where there is one. */
  Optional<ClockDrift> drift() {
    return now;
  }

  /** Values off the level that lie on a line of another slope are the level from now on. */
  private void takeThoseOff(Steady level) {
    List<Value> off = level.apart();
    if (off.size() < SHORTEST / 2) {
      return;
    }
    Slope slope = slope(off);
    if (less(slope, level.slope()).isThere(chance)) {
      level.startAgain(off);
      level.slides(slope.value());
    }
  }

  private Optional<Change> started(Steady level, List<Value> values) {
    StraightLine line = line(values);
    double rise = line.slope() * (values.get(values.size() - 1).to() - values.get(0).from());
    if (Math.abs(rise) < least + explained(values)
        || !Slope.of(line).isThere(chance)
        || !isStraight(values)) {
      return Optional.empty();
    }
    Hinge hinge = hinge(values);
    Slope slope = hinge.slope();
    if (!drift(slope).isLarge() || !slope.isThere(chance)) {
      return Optional.empty();
    }
    List<Value> slid = values.stream().filter(v -> v.at() >= hinge.at()).toList();
    Change change = new Change(true, level.left(line(slid)), drift(slope));
    level.startAgain(slid);
    slidesOn(level, slope);
    told = Optional.of(change.drift());
    return Optional.of(change);
  }

  /** When values begin to slide: some first ones may still have kept to the level. */
  private static Hinge hinge(List<Value> values) {
    return Hinge.of(
        Value.moments(values), Value.values(values, 0), Value.noises(values), SHORTEST / 2);
  }

  /**
   * What two windows may lie apart within their expanded uncertainties. A part of that is how far
   * the path's filters move the delay with the programme: no mean of many windows lessens it.
   */
  private static double explained(List<Value> values) {
    return Measurement.COVERAGE_FACTOR * Math.sqrt(2) * Median.of(Value.noises(values));
  }

  /** A slide is over when it is surely less than half of what was told. */
  private Optional<Change> ended(Steady level, List<Value> values) {
    Slope slope = slope(values);
    double before = told.orElseThrow().ppm();
    double half = before / 2 * hertz * 1e-6;
    Slope missing = less(slope.times(-Math.signum(before)), -Math.abs(half));
    if (!(missing.value() > 0 && missing.isThere(chance) && isStraight(values))) {
      return Optional.empty();
    }
    Change change = new Change(false, values.get(0).from(), drift(slope));
    told = Optional.empty();
    now = Optional.empty();
    level.startAgain(values);
    level.stays();
    return Optional.of(change);
  }

  private void slidesOn(Steady level, Slope perSecond) {
    now = Optional.of(drift(perSecond));
    level.slides(perSecond.value());
  }

  /** Whether both halves slide alike: else the slide began, or ended, in between. */
  private static boolean isStraight(List<Value> values) {
    Slope first = slope(values.subList(0, values.size() / 2));
    Slope second = slope(values.subList(values.size() / 2, values.size()));
    return Math.abs(second.value() - first.value())
        <= Math.hypot(first.expanded(), second.expanded());
  }

  private ClockDrift drift(Slope perSecond) {
    return ClockDrift.of(perSecond.times(1 / hertz));
  }

  private static Slope less(Slope slope, double by) {
    return new Slope(slope.value() - by, slope.fromNoise(), slope.fromScatter(), slope.degrees());
  }

  private static Slope slope(List<Value> values) {
    return Slope.of(line(values));
  }

  private static StraightLine line(List<Value> values) {
    return StraightLine.byNoise(
        Value.moments(values), Value.values(values, 0), Value.noises(values));
  }
}
