package dev.loopgauge.verify;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import java.util.Optional;

/**
 * The delay that a host or plug-in reports, compared with the delay that it adds.
 *
 * @param reported what it says; empty where only what it adds was asked
 * @param measuredSamples what was measured: all of the path, or its delay with the plug-in active
 *     less that with it bypassed
 * @param uncertaintySamples the expanded uncertainty of that, k = 2, in samples
 * @param answer what follows
 */
public record HostCheck(
    Optional<ReportedDelay> reported,
    double measuredSamples,
    double uncertaintySamples,
    HostAnswer answer) {
  /** Compares a reported delay with all that was measured. */
  public static HostCheck of(Measurement measured, ReportedDelay reported) {
    return of(
        Optional.of(reported),
        measured.budgeted().samples(),
        measured.budgeted().uncertaintySamples(),
        measured.method() != Method.UNCALIBRATED);
  }

  /**
   * Finds what a plug-in adds, and compares it with what is reported.
   *
   * @param active the path with the plug-in active
   * @param bypassed the same path with it bypassed, at the same rate
   * @param reported what it says that it adds, if that is known
   * @throws IllegalArgumentException when the rates differ
   */
  public static HostCheck ofDifference(
      Measurement active, Measurement bypassed, Optional<ReportedDelay> reported) {
    Shift shift = Shift.between(bypassed, active);
    return of(
        reported,
        shift.samples(),
        shift.uncertaintySamples(),
        active.method() != Method.UNCALIBRATED && bypassed.method() != Method.UNCALIBRATED);
  }

  /**
   * The same where the sound card's own delay may be in both, if it is the same in both: it
   * cancels.
   */
  static HostCheck added(
      Measurement active, Measurement bypassed, Optional<ReportedDelay> reported) {
    Shift shift = Shift.between(bypassed, active);
    return of(reported, shift.samples(), shift.uncertaintySamples(), true);
  }

  private static HostCheck of(
      Optional<ReportedDelay> reported, double measured, double uncertainty, boolean clean) {
    HostAnswer answer =
        clean
            ? reported.map(r -> HostAnswer.of(r, measured, uncertainty)).orElse(HostAnswer.UNASKED)
            : HostAnswer.UNDECIDED;
    return new HostCheck(reported, measured, uncertainty, answer);
  }

  /** How much more was measured than is reported, in samples; empty where nothing is reported. */
  public Optional<Double> differenceSamples() {
    return reported.map(r -> measuredSamples - r.samples());
  }

  /** Whether both agree; empty where that can't be told. */
  public Optional<Boolean> agrees() {
    return answer == HostAnswer.UNASKED || answer == HostAnswer.UNDECIDED
        ? Optional.empty()
        : Optional.of(answer == HostAnswer.AGREES || answer == HostAnswer.NO_DELAY);
  }

  /** Whether something is reported that is not shown to be true. */
  public boolean fails() {
    return reported.isPresent() && !agrees().orElse(false);
  }
}
