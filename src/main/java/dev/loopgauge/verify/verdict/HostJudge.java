package dev.loopgauge.verify.verdict;

import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.PlainNumber;
import dev.loopgauge.verify.StateCheck;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Judges what a host or plug-in reports. */
final class HostJudge {
  private HostJudge() {}

  /** Whether the report is true; empty where nothing is reported. */
  static Optional<AspectVerdict> of(HostCheck check) {
    return check.reported().map(reported -> of(check, reported.samples()));
  }

  /** The worst of what is reported in several states; empty where nothing is. */
  static Optional<AspectVerdict> ofStates(List<StateCheck> states) {
    return states.stream()
        .flatMap(state -> ofState(state).stream())
        .max(Comparator.comparing(AspectVerdict::judgement));
  }

  private static Optional<AspectVerdict> ofState(StateCheck state) {
    return state
        .host()
        .flatMap(HostJudge::of)
        .map(
            v ->
                new AspectVerdict(
                    v.aspect(),
                    v.judgement(),
                    "when " + state.reading().state() + ", " + v.text()));
  }

  private static AspectVerdict of(HostCheck check, double reported) {
    String text =
        String.format(
            Locale.ROOT,
            "%s samples are reported, %s were measured",
            PlainNumber.of(reported, 2),
            PlainNumber.of(check.measuredSamples(), 1));
    return check
        .agrees()
        .map(agrees -> AspectVerdict.of(Aspect.HOST, agrees, text))
        .orElseGet(() -> AspectVerdict.undecided(Aspect.HOST, text));
  }
}
