package dev.loopgauge.verify.verdict;

import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.verify.PlainNumber;
import java.util.Locale;

/** Judges the clocks by how they drift apart. */
final class ClockJudge {
  private static final double MS_AN_HOUR_PER_PPM = 3.6;

  private ClockJudge() {}

  /** Clocks that are shown to drift apart. */
  public static AspectVerdict notLocked(ClockDrift drift) {
    double ppm = Math.abs(drift.ppm());
    return AspectVerdict.of(
        Aspect.CLOCKS,
        false,
        String.format(
            Locale.ROOT,
            "drifts %s ms an hour (%s ppm)",
            PlainNumber.of(ppm * MS_AN_HOUR_PER_PPM, ppm < 30 ? 1 : 0),
            PlainNumber.of(drift.ppm(), 1)));
  }

  /** Clocks that show no drift. */
  public static AspectVerdict locked(ClockDrift drift) {
    double most = Math.abs(drift.ppm()) + drift.uncertaintyPpm();
    return AspectVerdict.of(
        Aspect.CLOCKS, true, "locked within " + PlainNumber.upTo(most, 2) + " ppm");
  }
}
