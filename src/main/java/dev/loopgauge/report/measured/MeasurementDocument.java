package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.estimate.Method;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.Verdict;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A measurement, what there is to know about it, and how it stands against its budget.
 *
 * @param command the command that measured
 * @param estimate the number, or why there is none
 * @param comparison how it stands against the budget; empty without a budget or a number
 * @param hostCheck what it says about a delay that host or plug-in report, where that was asked
 * @param notes what the reader must take for granted, one sentence each; for the text alone
 */
public record MeasurementDocument(
    String command,
    Estimate estimate,
    Optional<Comparison> comparison,
    Optional<HostCheck> hostCheck,
    List<String> notes)
    implements Document {
  /** A measurement without a host check. */
  public MeasurementDocument(
      String command, Estimate estimate, Optional<Comparison> comparison, List<String> notes) {
    this(command, estimate, comparison, Optional.empty(), notes);
  }

  /**
   * Copies the notes.
   *
   * @throws IllegalArgumentException when there is a comparison or host check without a number, or
   *     a verdict on a number with the sound card's own delay in it
   */
  public MeasurementDocument {
    notes = List.copyOf(notes);
    Optional<Measurement> measurement = measurementOf(estimate);
    if ((comparison.isPresent() || hostCheck.isPresent()) && measurement.isEmpty()) {
      throw new IllegalArgumentException("a comparison needs a measurement: " + estimate);
    }
    boolean uncalibrated = measurement.filter(m -> m.method() == Method.UNCALIBRATED).isPresent();
    boolean decided = comparison.filter(c -> c.verdict() != Verdict.UNDECIDED).isPresent();
    if (uncalibrated && decided) {
      throw new IllegalArgumentException("an uncalibrated number has no verdict: " + comparison);
    }
  }

  /** What it came to. */
  public Outcome outcome() {
    return Outcome.of(estimate, comparison);
  }

  /** The number, where it can be trusted. */
  public Optional<Measurement> measurement() {
    return measurementOf(estimate);
  }

  private static Optional<Measurement> measurementOf(Estimate estimate) {
    return estimate instanceof Estimate.Found found
        ? Optional.of(found.measurement())
        : Optional.empty();
  }

  @Override
  public String text() {
    return new MeasurementText(this).toString();
  }

  @Override
  public Map<String, Object> json() {
    return MeasurementJson.of(this);
  }
}
