package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.StateCheck;
import dev.loopgauge.verify.Verdict;
import dev.loopgauge.verify.verdict.JudgedReading;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A measurement, what there is to know about it, and how it stands against its budget.
 *
 * @param command the command that measured
 * @param outcome what the delay came to
 * @param verdict how everything that was heard stands; documents of older versions have none
 * @param measurement the number; null when it can't be trusted
 * @param findings what a person must know
 * @param comparison how it stands against the budget; null without a budget or a number
 * @param response what came back around the arrival, where that is known
 * @param hostCheck what it says about a delay that host or plug-in report, where that was asked
 * @param states a plug-in in one state after another, where that was asked
 * @param notes what the reader must take for granted, one sentence each
 * @param kept whether it was kept in the journal, where that was asked
 */
public record MeasurementDocument(
    String command,
    Outcome outcome,
    Optional<VerdictRecord> verdict,
    Optional<MeasurementRecord> measurement,
    List<FindingRecord> findings,
    Optional<ComparisonRecord> comparison,
    Optional<ResponseRecord> response,
    Optional<HostCheckRecord> hostCheck,
    List<StateRecord> states,
    List<String> notes,
    Optional<KeptRecord> kept)
    implements Keepable, Sparse {
  /**
   * A measurement.
   *
   * @throws IllegalArgumentException when there is a comparison or host check without a number, or
   *     a verdict on a number with the sound card's own delay in it
   */
  public static MeasurementDocument of(String command, JudgedReading reading, List<String> notes) {
    Estimate estimate = reading.estimate();
    Optional<Comparison> comparison = reading.comparison();
    Optional<HostCheck> hostCheck = reading.hostCheck();
    Optional<Measurement> measurement =
        estimate instanceof Estimate.Found found
            ? Optional.of(found.measurement())
            : Optional.empty();
    check(measurement, comparison, hostCheck);
    return new MeasurementDocument(
        command,
        Outcome.of(estimate, comparison),
        Optional.of(VerdictRecord.of(reading.verdict())),
        MeasurementRecord.of(measurement),
        FindingRecord.of(estimate.findings()),
        ComparisonRecord.of(comparison),
        ResponseRecord.of(measurement),
        HostCheckRecord.of(hostCheck),
        List.of(),
        List.copyOf(notes),
        Optional.empty());
  }

  private static void check(
      Optional<Measurement> measurement,
      Optional<Comparison> comparison,
      Optional<HostCheck> hostCheck) {
    if ((comparison.isPresent() || hostCheck.isPresent()) && measurement.isEmpty()) {
      throw new IllegalArgumentException("a comparison needs a measurement: " + comparison);
    }
    boolean uncalibrated =
        measurement.isPresent() && measurement.get().method() == Method.UNCALIBRATED;
    boolean decided = comparison.isPresent() && comparison.get().verdict() != Verdict.UNDECIDED;
    if (uncalibrated && decided) {
      throw new IllegalArgumentException("an uncalibrated number has no verdict: " + comparison);
    }
  }

  /** The same of the state that matters, with every state in the order they were read. */
  public MeasurementDocument withStates(List<StateCheck> checks) {
    return new MeasurementDocument(
        command,
        outcome,
        verdict,
        measurement,
        findings,
        comparison,
        response,
        hostCheck,
        checks.stream().map(StateRecord::of).toList(),
        notes,
        kept);
  }

  @Override
  public MeasurementDocument withKept(KeptRecord now) {
    return new MeasurementDocument(
        command,
        outcome,
        verdict,
        measurement,
        findings,
        comparison,
        response,
        hostCheck,
        states,
        notes,
        Optional.of(now));
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("verdict", "response", "hostCheck", "states", "notes", "kept");
  }

  /** The delay, where it can be trusted. */
  public Optional<ShownDelay> delay() {
    return measurement.map(MeasurementRecord::delay);
  }

  /** The first line, or why there is no number. */
  public String line() {
    return headline()
        .map(Headline::line)
        .orElseGet(() -> new MeasurementText(new Sheet(), findings, comparison).refusal());
  }

  /** The first line; empty where there is no number. */
  public Optional<Headline> headline() {
    return measurement.isPresent()
        ? Optional.of(Headline.of(measurement.get(), outcome, comparison, verdict))
        : Optional.empty();
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet();
    if (!states.isEmpty()) {
      new StatesText(states).tell(sheet);
      sheet.gap();
    }
    new MeasurementText(sheet, findings, comparison).tell(measurement, hostCheck, headline());
    for (String note : notes) {
      sheet.row("note", note);
    }
    return sheet.toString();
  }
}
