package dev.loopgauge.estimate.drift;

import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Step;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The words for a delay that changes: clocks that drift, steps, groups of repeats. */
public final class DriftFindings {
  private static final int MOST_STEPS = 3;

  private DriftFindings() {}

  public static Finding drifting(ClockDrift drift) {
    double magnitude = Math.abs(drift.ppm());
    double uncertainty = Math.max(ClockDrift.LEAST_PPM, drift.uncertaintyPpm());
    int decimals = uncertainty < 10 ? 1 : 0;
    return Finding.remark(
        FindingCode.CLOCKS_NOT_LOCKED,
        String.format(
            Locale.ROOT,
            "the clocks are not locked: the return %s by %s ppm (± %s ppm), %s ms an hour",
            drift.ppm() > 0 ? "falls behind" : "runs ahead",
            plain(magnitude, decimals, RoundingMode.HALF_UP),
            plain(uncertainty, decimals, RoundingMode.UP),
            plain(magnitude * 3.6, magnitude < 30 ? 1 : 0, RoundingMode.HALF_UP)),
        likelyCause(magnitude));
  }

  /** Common practice, no source: crystals keep within some tens of ppm; 1000 / 1001 is 999 ppm. */
  private static String likelyCause(double ppm) {
    if (ppm < 200) {
      return "two devices each run on their own clock: let one lead and sync the other to it";
    }
    if (ppm > 700 && ppm < 1300) {
      return "about 0.1 % is a pull-down rate against a plain one, or samples lost all the time:"
          + " check the sample rates, then look for dropouts";
    }
    if (ppm < 2000) {
      return "no two good clocks are so far apart: look for samples lost or repeated all the time,"
          + " and for a rate converter in the path";
    }
    return "the rates differ: check the sample rate of each device";
  }

  static Finding groups(Map<Double, Integer> groups) {
    String counts =
        groups.entrySet().stream()
            .map(
                group -> String.format(Locale.ROOT, "%d at %.2f", group.getValue(), group.getKey()))
            .collect(Collectors.joining(", "));
    return Finding.remark(
        FindingCode.DROPOUT,
        "the repeats fall into groups: " + counts + " samples",
        "the path changed in between: a dropout, a reconnected stream or a changed block size."
            + " Measure again");
  }

  static Finding disagree(List<Double> delays) {
    String shown =
        delays.stream()
            .map(d -> String.format(Locale.ROOT, "%.2f", d))
            .collect(Collectors.joining(", "));
    return Finding.refusing(
        FindingCode.DROPOUT,
        "no two repeats agree: " + shown + " samples",
        "the path changes all the time: look for dropouts, and measure again");
  }

  static Finding stepped(List<Step> steps) {
    String shown =
        steps.stream()
            .limit(MOST_STEPS)
            .map(
                step ->
                    String.format(
                        Locale.ROOT,
                        "by %+.2f samples at %.0f s",
                        step.changeSamples(),
                        step.atSeconds()))
            .collect(Collectors.joining(", "));
    int more = steps.size() - MOST_STEPS;
    return Finding.remark(
        FindingCode.DROPOUT,
        "the delay jumped and stayed: " + shown + (more > 0 ? ", and " + more + " times more" : ""),
        "look at what happened then: a dropout, a reopened stream, a changed block size or plug-in");
  }

  static Finding noWindow(double windowSeconds) {
    return Finding.refusing(
        FindingCode.NO_RETURN,
        String.format(
            Locale.ROOT, "in no window of %.1f s could the return be placed", windowSeconds),
        "is the return the right channel, and is there sound? Look further with --max-delay, or"
            + " take other windows with --window");
  }

  private static String plain(double number, int decimals, RoundingMode mode) {
    return BigDecimal.valueOf(number).setScale(decimals, mode).toPlainString();
  }
}
