package dev.loopgauge.verify.verdict;

import dev.loopgauge.chain.Expectation;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.StateCheck;
import java.util.List;
import java.util.Optional;

/**
 * A reading, how it stands against its budget and the host's report, and the verdict over all of
 * it.
 *
 * @param comparison how the delay stands against its budget; empty without a budget or a number
 * @param hostCheck what it says about a delay that host or plug-in report, where that was asked
 */
public record JudgedReading(
    Estimate estimate,
    Optional<Comparison> comparison,
    Optional<HostCheck> hostCheck,
    OverallVerdict verdict) {
  /** A reading of no path that is known: only what needs no file is judged. */
  public static JudgedReading ofNoPath(Estimate estimate, Optional<HostCheck> hostCheck) {
    return of(estimate, Optional.empty(), hostCheck, Optional.empty(), Optional.empty());
  }

  /**
   * A reading of a path.
   *
   * @param expected what the path's return should be like
   * @param picture how the path stands against its picture, where it has one
   */
  public static JudgedReading ofPath(
      Estimate estimate,
      Optional<Comparison> comparison,
      Optional<HostCheck> hostCheck,
      Expectation expected,
      Optional<AspectVerdict> picture) {
    return of(estimate, comparison, hostCheck, Optional.of(expected), picture);
  }

  /** The same reading of a plug-in, with the reports of all its states in the verdict. */
  public JudgedReading withStates(List<StateCheck> states) {
    return new JudgedReading(
        estimate,
        comparison,
        hostCheck,
        HostJudge.ofStates(states).map(verdict::with).orElse(verdict));
  }

  private static JudgedReading of(
      Estimate estimate,
      Optional<Comparison> comparison,
      Optional<HostCheck> hostCheck,
      Optional<Expectation> expected,
      Optional<AspectVerdict> picture) {
    List<AspectVerdict> aspects =
        estimate instanceof Estimate.Found found
            ? new ReadingJudge(found, expected).aspects(comparison, hostCheck, picture)
            : ReadingJudge.ofRefused((Estimate.Refused) estimate);
    return new JudgedReading(estimate, comparison, hostCheck, new OverallVerdict(aspects));
  }
}
