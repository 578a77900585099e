package dev.loopgauge.verify.watch;

import dev.loopgauge.stats.ChangePoints;
import dev.loopgauge.stats.MeanShift;
import dev.loopgauge.stats.RobustScatter;
import dev.loopgauge.stats.StraightLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A level that values keep to until they move to another one and stay. Windows may overlap; what is
 * tested are windows that don't, so that each value is one of its own.
 *
 * <p>A value that is off becomes a move only with a second one that agrees with it to within noise
 * and scatter: one odd window is none, and neither is a level that slides.
 */
final class Steady {
  /** Enough to tell a slope from a level. */
  private static final int REMEMBERED = 64;

  /** A level is that of its last values, so that it follows what wanders slowly. */
  private static final int SIDE = 4;

  /** Values that stay off for so long are the level, though nobody can tell how sure that is. */
  private static final int STAYED = 8;

  /**
   * With fewer values, a single move would count as scatter: it bends the line through three
   * neighbours twice, three times where a window holds both levels, of seven.
   */
  private static final int FEWEST_TO_SCATTER = 9;

  private static final int RECENT = 24;

  private final double least;
  private final double chance;
  private final List<Value> settled = new ArrayList<>();
  private final List<Value> off = new ArrayList<>();
  private final List<Value> recent = new ArrayList<>();
  private Optional<Value> kept = Optional.empty();
  private Optional<Start> start = Optional.empty();
  private double slope;

  /**
   * No value was read yet.
   *
   * @param least what moves less than this is no move, in the unit of the values
   * @param chance how often one test may tell a move that is none
   */
  Steady(double least, double chance) {
    this.least = least;
    this.chance = chance;
  }

  /**
   * The level as it was when the watch began, or after its last move.
   *
   * @param at since when, in seconds
   */
  record Start(double at, double level) {}

  /**
   * A move to another level.
   *
   * @param from the level before
   * @param to the level after
   * @param uncertainty the expanded uncertainty of their difference, k = 2
   * @param first the first window that showed it
   */
  record Move(double from, double to, double uncertainty, Value first) {
    double change() {
      return to - from;
    }
  }

  /** Takes the next value. */
  Optional<Move> next(Value value) {
    if (recent.isEmpty() || value.isApartFrom(recent.get(recent.size() - 1))) {
      recent.add(value);
      if (recent.size() > RECENT) {
        recent.remove(0);
      }
    }
    if (settled.isEmpty() || isNear(value)) {
      off.clear();
      kept = Optional.of(value);
      settle(value);
      return Optional.empty();
    }
    off.add(value);
    return moved();
  }

  /** Something came between: what was off before and after it need not be one level. */
  void interrupt() {
    off.clear();
  }

  /** Whether a value is no further off the level than a move of no account or chance puts it. */
  boolean isNear(Value value) {
    double most = Math.max(least, ChangePoints.LIMIT * spread(value));
    return awayFrom(value, true) >= -most && awayFrom(value, false) <= most;
  }

  /** How far below the level, or above it, a value is beyond what the programme explains. */
  private double awayFrom(Value value, boolean falls) {
    List<Value> one = List.of(value);
    List<Value> before = last(Programme.explainingLeast(settled, one, falls, SIDE), SIDE);
    double away = value.without(slope) - Value.mean(Value.values(before, slope));
    return falls == away < 0 ? Programme.unexplained(away, before, one) : 0;
  }

  private double spread(Value value) {
    return Math.max(value.noise(), scatter());
  }

  /** How values scatter from one to the next, whether they keep to the level or not. */
  private double scatter() {
    if (recent.size() < FEWEST_TO_SCATTER) {
      return 0;
    }
    double widening = 1 + 5.0 / (recent.size() - 2);
    return widening * RobustScatter.fromBends(Value.moments(recent), Value.values(recent, 0));
  }

  /** The level with the slope taken out. */
  private double level() {
    return Value.mean(Value.values(last(settled, SIDE), slope));
  }

  /** The level at a time, in seconds. */
  double at(double time) {
    return level() + slope * time;
  }

  private void settle(Value value) {
    if (settled.isEmpty() || value.isApartFrom(settled.get(settled.size() - 1))) {
      settled.add(value);
      if (settled.size() > REMEMBERED) {
        settled.remove(0);
      }
    }
    if (start.isEmpty() && settled.size() == SIDE) {
      start = Optional.of(new Start(settled.get(0).from(), level()));
    }
  }

  private Optional<Move> moved() {
    List<Value> apart = apart();
    List<Value> after = flatEnd(apart);
    if (after.size() < 2) {
      return Optional.empty();
    }
    // A window that overlaps the first one off may hold some of the move already.
    List<Value> untouched = new ArrayList<>(settled);
    while (untouched.size() > 1 && !off.get(0).isApartFrom(last(untouched, 1).get(0))) {
      untouched.remove(untouched.size() - 1);
    }
    // The first one off may still hold some of the sound before.
    List<Value> clean = after.subList(1, after.size());
    MeanShift test = unexplained(untouched, after);
    if (Math.abs(test.value()) < least || !test.isThere(chance) || slides(untouched, clean)) {
      if (apart.size() >= STAYED) {
        startAgain(after);
      }
      return Optional.empty();
    }
    List<Value> before = last(Programme.nearest(untouched, clean, SIDE), SIDE);
    MeanShift size = shift(before, clean, before);
    double uncertainty = Math.hypot(expanded(size), Programme.apart(before, clean));
    double time = off.get(0).at();
    double from = Value.mean(Value.values(before, slope)) + slope * time;
    Value first = off.get(0);
    startAgain(clean);
    start = Optional.of(new Start(clean.get(0).from(), from + size.value()));
    return Optional.of(new Move(from, from + size.value(), uncertainty, first));
  }

  /**
   * Whether a level that slides explains the last values as well as a step does, or nearly so: then
   * more values will tell. Of values that go by the programme the last ones before may be what it
   * explained, so a fade is told as moves.
   */
  private boolean slides(List<Value> before, List<Value> after) {
    if (after.get(0).sent().isPresent()) {
      return false;
    }
    double better =
        new StepOrSlide(last(before, SIDE), after, slope, scatter(), pausedFrom()).better();
    return better < ChangePoints.LIMIT * ChangePoints.LIMIT;
  }

  /**
   * When the last value that kept to the level was read, where the programme paused after it. A
   * move is in two windows at most that overlap by half, which may be unread for that.
   */
  private OptionalDouble pausedFrom() {
    Value last = kept.orElseThrow();
    boolean paused = off.get(0).from() - last.to() >= last.to() - last.from();
    return paused ? OptionalDouble.of(last.at()) : OptionalDouble.empty();
  }

  /** Without a degree of freedom the noise alone is known. */
  private static double expanded(MeanShift size) {
    return size.degrees() > 0 ? size.expanded() : 2 * size.fromNoise();
  }

  /** What the programme doesn't explain of a shift. */
  private MeanShift unexplained(List<Value> untouched, List<Value> after) {
    boolean falls = awayFrom(last(off, 1).get(0), true) < 0;
    List<Value> before = Programme.explainingLeast(untouched, after, falls, SIDE);
    MeanShift shift = shift(before, after, untouched);
    return shift.with(Programme.unexplained(shift.value(), before, after));
  }

  /**
   * The shift between two levels.
   *
   * @param scattered values whose scatter tells that of those before
   */
  private MeanShift shift(List<Value> before, List<Value> after, List<Value> scattered) {
    return MeanShift.of(
        Value.values(before, slope),
        Value.values(after, slope),
        Value.noises(before),
        Value.noises(after),
        Value.values(scattered, slope));
  }

  /** The last values that agree with one another. */
  private List<Value> flatEnd(List<Value> values) {
    for (int from = 0; from + 2 <= values.size(); from++) {
      List<Value> end = values.subList(from, values.size());
      if (isFlat(end)) {
        return end;
      }
    }
    return List.of();
  }

  private boolean isFlat(List<Value> values) {
    double mean = Value.mean(Value.values(values, slope));
    for (Value value : values) {
      if (Math.abs(value.without(slope) - mean) > ChangePoints.LIMIT * spread(value)) {
        return false;
      }
    }
    return true;
  }

  /** The values that are off and lie in windows of their own, the newest among them. */
  List<Value> apart() {
    List<Value> apart = new ArrayList<>();
    for (int i = off.size() - 1; i >= 0; i--) {
      if (apart.isEmpty() || apart.get(0).isApartFrom(off.get(i))) {
        apart.add(0, off.get(i));
      }
    }
    return apart;
  }

  /** The values that keep to the level, each of sound of its own. */
  List<Value> settled() {
    return settled;
  }

  /** Values show a level of their own: what was before counts no more. */
  void startAgain(List<Value> values) {
    List<Value> again = List.copyOf(values);
    settled.clear();
    settled.addAll(again);
    kept = Optional.of(again.get(again.size() - 1));
    off.clear();
  }

  /** What the level moves by from now on, in units a second. */
  void slides(double perSecond) {
    slope = perSecond;
  }

  /** The level slides no more: where it is from now on is where it starts anew. */
  void stays() {
    slope = 0;
    start = Optional.empty();
  }

  /** When a line left the level that was before, in seconds; at the latest in its middle. */
  double left(StraightLine line) {
    if (start.isEmpty()) {
      return line.middleX();
    }
    double meets = line.middleX() + (start.get().level() - line.middleY()) / line.slope();
    return Math.max(start.get().at(), Math.min(line.middleX(), meets));
  }

  double slope() {
    return slope;
  }

  static List<Value> last(List<Value> values, int count) {
    return values.subList(Math.max(0, values.size() - count), values.size());
  }
}
