package dev.loopgauge.journal;

import dev.loopgauge.signal.Latency;
import dev.loopgauge.verify.Shift;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The same path measured twice, or once where the other measurement is missing.
 *
 * @param path the path's name; empty for measurements that named none
 * @param first the earlier measurement
 * @param second the later one
 */
public record PathPair(Optional<String> path, Optional<Heading> first, Optional<Heading> second) {
  /** What can be said of the two. */
  public enum Standing {
    /** As before, within the uncertainty of both. */
    SAME,
    /** Not as before. */
    CHANGED,
    /** A measurement is missing, or could not be trusted. */
    NOT_COMPARED
  }

  /**
   * The paths of a show before and after it. The last measurement of each counts; where a path was
   * not measured after the show, the last one during it stands in.
   *
   * @param show the entries of the show that stand, in the order of their time
   */
  public static List<PathPair> beforeAndAfter(List<Heading> show) {
    Map<Optional<String>, Heading> after = latest(show, When.DURING);
    after.putAll(latest(show, When.AFTER));
    return pairs(latest(show, When.BEFORE), after);
  }

  /**
   * The paths of two shows at the same part of the day.
   *
   * @param earlier the entries of one show that stand, in the order of their time
   * @param later those of the other
   */
  public static List<PathPair> between(List<Heading> earlier, List<Heading> later, When when) {
    return pairs(latest(earlier, when), latest(later, when));
  }

  private static Map<Optional<String>, Heading> latest(List<Heading> headings, When when) {
    Map<Optional<String>, Heading> latest = new LinkedHashMap<>();
    headings.stream()
        .filter(heading -> heading.when() == when)
        .forEach(heading -> latest.put(heading.path(), heading));
    return latest;
  }

  private static List<PathPair> pairs(
      Map<Optional<String>, Heading> first, Map<Optional<String>, Heading> second) {
    Set<Optional<String>> paths = new LinkedHashSet<>(first.keySet());
    paths.addAll(second.keySet());
    List<PathPair> pairs = new ArrayList<>();
    for (Optional<String> path : paths) {
      pairs.add(
          new PathPair(
              path, Optional.ofNullable(first.get(path)), Optional.ofNullable(second.get(path))));
    }
    return List.copyOf(pairs);
  }

  /**
   * How much later the second is, in samples of the second's rate; empty where a number is missing.
   * The uncertainties add as squares (JCGM 100:2008, 5.1.2). At different rates, times are
   * compared.
   */
  public Optional<Shift> shift() {
    return delay(first).flatMap(before -> delay(second).map(after -> shift(before, after)));
  }

  private static Optional<LoggedDelay> delay(Optional<Heading> heading) {
    return heading.flatMap(Heading::delay);
  }

  private static Shift shift(LoggedDelay before, LoggedDelay after) {
    LoggedDelay then = before.at(after.delay().rate());
    return new Shift(
        after.delay().minus(then.delay()).samples(),
        Math.hypot(then.uncertaintySamples(), after.uncertaintySamples()));
  }

  /** How much later the second is, with its rate; empty where a number is missing. */
  public Optional<Latency> later() {
    return shift()
        .map(shift -> new Latency(shift.samples(), delay(second).orElseThrow().delay().rate()));
  }

  /** What can be said of the two. */
  public Standing standing() {
    return shift()
        .map(shift -> shift.moved() ? Standing.CHANGED : Standing.SAME)
        .orElse(Standing.NOT_COMPARED);
  }
}
