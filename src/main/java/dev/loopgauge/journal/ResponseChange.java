package dev.loopgauge.journal;

import dev.loopgauge.journal.MeasuredSummary.Octave;
import dev.loopgauge.stats.Median;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** Compares the levels of the octaves that two measurements both trust. */
final class ResponseChange {
  /** The least change of an octave that counts, in dB: half or twice the power. */
  private static final double LEAST_DB = 3;

  private ResponseChange() {}

  /** What a measured octave became. */
  private record Moved(double centreHz, double byDb, double uncertaintyDb) {
    private Moved less(double commonDb) {
      return new Moved(centreHz, byDb - commonDb, uncertaintyDb);
    }

    private boolean counts() {
      return Math.abs(byDb) > Math.max(LEAST_DB, uncertaintyDb);
    }
  }

  /** The octave that changed most beside what they have in common, if any did. */
  static Optional<AspectChange> between(List<Octave> before, List<Octave> after) {
    List<Moved> moved = new ArrayList<>();
    for (Octave was : before) {
      after.stream()
          .filter(is -> is.centreHz() == was.centreHz())
          .findFirst()
          .ifPresent(is -> moved.add(moved(was, is)));
    }
    if (moved.isEmpty()) {
      return Optional.empty();
    }
    double common = common(moved);
    List<Moved> changed =
        moved.stream().map(octave -> octave.less(common)).filter(Moved::counts).toList();
    return changed.stream()
        .max((one, other) -> Double.compare(Math.abs(one.byDb()), Math.abs(other.byDb())))
        .map(most -> new AspectChange.Response(most.centreHz(), most.byDb(), changed.size()));
  }

  /**
   * What the octaves have in common, a mere change of level: what most of them agree on, by half
   * the power and no more. Of two such sets the louder one counts, since a path loses sound more
   * easily than it gains any.
   */
  private static double common(List<Moved> moved) {
    return moved.stream()
        .map(least -> moved.stream().mapToDouble(Moved::byDb).filter(db -> within(least, db)))
        .map(DoubleStream::toArray)
        .max(
            Comparator.<double[]>comparingInt(set -> set.length)
                .thenComparing(set -> Median.of(set)))
        .map(set -> Median.of(set))
        .orElseThrow();
  }

  private static boolean within(Moved least, double db) {
    return db >= least.byDb() && db <= least.byDb() + LEAST_DB;
  }

  private static Moved moved(Octave was, Octave is) {
    double uncertainty = Math.hypot(was.uncertaintyDb(), is.uncertaintyDb());
    return new Moved(was.centreHz(), is.levelDb() - was.levelDb(), uncertainty);
  }
}
