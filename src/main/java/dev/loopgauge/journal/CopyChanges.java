package dev.loopgauge.journal;

import dev.loopgauge.journal.MeasuredSummary.Copy;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Compares the copies of the sound that come back beside the measured one. */
final class CopyChanges {
  /**
   * A copy whose amplitude changes by less, against the measured one's, can't change the level of
   * both together by 1 dB, the least that is heard (derived: 20 log10(1 + a) = 1).
   */
  static final double LEAST_GAIN = Math.pow(10, 1 / 20.0) - 1;

  /** Copies nearer to each other than this the estimator doesn't tell apart, in ms. */
  private static final double SAME_MS = 0.25;

  /**
   * The share of its way that a reflection's time may move: 10 degrees of air, 0.17 % each (the
   * speed of sound of ISO 9613-1, derived).
   */
  private static final double AIR = 0.02;

  private CopyChanges() {}

  /** The copy that changed most, if any did. */
  static List<AspectChange> between(List<Copy> before, List<Copy> after) {
    List<AspectChange.Arrival> changes = new ArrayList<>();
    List<Copy> left = new ArrayList<>(before);
    for (Copy copy : after) {
      Optional<Copy> same = left.stream().filter(other -> isSame(copy, other)).findFirst();
      same.ifPresent(left::remove);
      double was = same.map(Copy::gain).orElse(0.0);
      changes.add(new AspectChange.Arrival(copy.laterMs(), was, copy.gain()));
    }
    left.forEach(gone -> changes.add(new AspectChange.Arrival(gone.laterMs(), gone.gain(), 0)));
    return changes.stream()
        .filter(change -> size(change) >= LEAST_GAIN)
        .max((one, other) -> Double.compare(size(one), size(other)))
        .map(most -> List.<AspectChange>of(most))
        .orElse(List.of());
  }

  /**
   * Leaves out what is told twice, where a copy came that may be the path instead, or is such a
   * copy no longer: of one that grew the finding says more, of one that went the change.
   */
  static List<AspectChange> toldOnce(List<AspectChange> changes) {
    Optional<AspectChange.Found> found =
        of(AspectChange.Found.class, changes)
            .filter(change -> change.aspect() == ComparedAspect.ARRIVALS)
            .findFirst();
    Optional<AspectChange.Arrival> arrival = of(AspectChange.Arrival.class, changes).findFirst();
    if (found.isEmpty() || arrival.isEmpty() || found.get().gone() == grew(arrival.get())) {
      return changes;
    }
    AspectChange less = found.get().gone() ? found.get() : arrival.get();
    return changes.stream().filter(change -> change != less).toList();
  }

  private static <T> Stream<T> of(Class<T> kind, List<AspectChange> changes) {
    return changes.stream().filter(kind::isInstance).map(kind::cast);
  }

  private static boolean grew(AspectChange.Arrival arrival) {
    return Math.abs(arrival.after()) > Math.abs(arrival.before());
  }

  private static double size(AspectChange.Arrival change) {
    return Math.abs(change.after() - change.before());
  }

  private static boolean isSame(Copy one, Copy other) {
    double apart = Math.abs(one.laterMs() - other.laterMs());
    return apart <= Math.max(SAME_MS, AIR * Math.abs(one.laterMs()));
  }
}
