package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.estimate.Method;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.StateCheck;
import dev.loopgauge.verify.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A measurement, what there is to know about it, and how it stands against its budget.
 *
 * @param command the command that measured
 * @param outcome what it came to
 * @param measurement the number; null when it can't be trusted
 * @param findings what a person must know
 * @param comparison how it stands against the budget; null without a budget or a number
 * @param response what came back around the arrival, where that is known
 * @param hostCheck what it says about a delay that host or plug-in report, where that was asked
 * @param states a plug-in in one state after another, where that was asked
 * @param notes what the reader must take for granted, one sentence each
 */
public record MeasurementDocument(
    String command,
    Outcome outcome,
    Optional<MeasurementRecord> measurement,
    List<FindingRecord> findings,
    Optional<ComparisonRecord> comparison,
    Optional<ResponseRecord> response,
    Optional<HostCheckRecord> hostCheck,
    List<StateRecord> states,
    List<String> notes)
    implements Document, Sparse {
  /** A measurement without a host check. */
  public static MeasurementDocument of(
      String command, Estimate estimate, Optional<Comparison> comparison, List<String> notes) {
    return of(command, estimate, comparison, Optional.empty(), notes);
  }

  /**
   * A measurement.
   *
   * @throws IllegalArgumentException when there is a comparison or host check without a number, or
   *     a verdict on a number with the sound card's own delay in it
   */
  public static MeasurementDocument of(
      String command,
      Estimate estimate,
      Optional<Comparison> comparison,
      Optional<HostCheck> hostCheck,
      List<String> notes) {
    Optional<Measurement> measurement =
        estimate instanceof Estimate.Found found
            ? Optional.of(found.measurement())
            : Optional.empty();
    check(measurement, comparison, hostCheck);
    return new MeasurementDocument(
        command,
        Outcome.of(estimate, comparison),
        measurement.map(MeasurementRecord::of),
        estimate.findings().stream().map(FindingRecord::of).toList(),
        comparison.map(ComparisonRecord::of),
        measurement.flatMap(Measurement::response).map(ResponseRecord::of),
        hostCheck.map(HostCheckRecord::of),
        List.of(),
        List.copyOf(notes));
  }

  private static void check(
      Optional<Measurement> measurement,
      Optional<Comparison> comparison,
      Optional<HostCheck> hostCheck) {
    if ((comparison.isPresent() || hostCheck.isPresent()) && measurement.isEmpty()) {
      throw new IllegalArgumentException("a comparison needs a measurement: " + comparison);
    }
    boolean uncalibrated = measurement.filter(m -> m.method() == Method.UNCALIBRATED).isPresent();
    boolean decided = comparison.filter(c -> c.verdict() != Verdict.UNDECIDED).isPresent();
    if (uncalibrated && decided) {
      throw new IllegalArgumentException("an uncalibrated number has no verdict: " + comparison);
    }
  }

  /** The same of the state that matters, with every state in the order they were read. */
  public MeasurementDocument withStates(List<StateCheck> checks) {
    return new MeasurementDocument(
        command,
        outcome,
        measurement,
        findings,
        comparison,
        response,
        hostCheck,
        checks.stream().map(StateRecord::of).toList(),
        notes);
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("response", "hostCheck", "states", "notes");
  }

  /** The delay, where it can be trusted. */
  public Optional<ShownDelay> delay() {
    return measurement.map(MeasurementRecord::delay);
  }

  /** Whether a delay is reported that isn't true, in any state. */
  public boolean failsHostCheck() {
    return hostCheck.filter(HostCheckRecord::fails).isPresent()
        || states.stream().anyMatch(StateRecord::fails);
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    if (!states.isEmpty()) {
      new StatesText(states).tell(sheet);
      sheet.gap();
    }
    new MeasurementText(sheet, findings, comparison).tell(measurement, hostCheck, outcome);
    notes.forEach(note -> sheet.row("note", note));
    return sheet.toString();
  }
}
