package dev.loopgauge.report.budget;

import dev.loopgauge.chain.ListenerLimits;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.signal.Latency;

/** How listeners stand, in words; what needs attention is in capitals. */
final class Standings {
  private Standings() {}

  /** Of a path: {@code OVER by 7.4 ms}. */
  static String of(PathBudget path) {
    return of(path.limits(), path.delay());
  }

  /** Of a delay against a listener's limits. */
  static String of(ListenerLimits limits, Latency delay) {
    return switch (limits.standing(delay.ms())) {
      case WITHIN -> "within";
      case CAUTION -> "CAUTION";
      case OVER -> "OVER by " + beyond(limits, delay);
    };
  }

  /** How far a delay that is over lies beyond the limit: {@code 7.4 ms}. */
  static String beyond(ListenerLimits limits, Latency delay) {
    return Numbers.plain(delay.ms() - limits.limitMs().orElseThrow(), 1) + " ms";
  }
}
