package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.verify.ReportedDelay;
import dev.loopgauge.verify.Shift;
import dev.loopgauge.verify.StateCheck;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;

/**
 * A plug-in in one state, as documents hold it.
 *
 * @param movedSamples how much later than in the state that the others are compared with
 * @param othersMovedSamples how much later the channel beside it became
 */
public record StateRecord(
    String state,
    BigDecimal delaySamples,
    BigDecimal uncertaintySamples,
    Optional<BigDecimal> reportedSamples,
    Optional<BigDecimal> movedSamples,
    Optional<BigDecimal> movedUncertaintySamples,
    Optional<BigDecimal> othersMovedSamples,
    Optional<BigDecimal> othersMovedUncertaintySamples,
    Optional<HostCheckRecord> hostCheck)
    implements Sparse {
  /** Of a state that was checked. */
  static StateRecord of(StateCheck check) {
    double uncertainty = check.reading().path().uncertaintySamples();
    return new StateRecord(
        check.reading().state(),
        Written.samples(check.reading().path().delay().samples(), uncertainty),
        Written.uncertainSamples(uncertainty),
        check.reading().reported().map(ReportedDelay::samples).map(Written::samples),
        check.path().map(StateRecord::samples),
        check.path().map(Shift::uncertaintySamples).map(Written::uncertainSamples),
        check.witness().map(StateRecord::samples),
        check.witness().map(Shift::uncertaintySamples).map(Written::uncertainSamples),
        check.host().map(HostCheckRecord::of));
  }

  private static BigDecimal samples(Shift shift) {
    return Written.samples(shift.samples(), shift.uncertaintySamples());
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("movedUncertaintySamples", "othersMovedUncertaintySamples");
  }

  /** Whether what is reported in this state isn't true. */
  boolean fails() {
    return hostCheck.filter(HostCheckRecord::fails).isPresent();
  }

  /** How much it moved. */
  Optional<Shift> moved() {
    return shift(movedSamples, movedUncertaintySamples);
  }

  /** How much the channel beside it moved, if it did. */
  Optional<Shift> movedOthers() {
    return shift(othersMovedSamples, othersMovedUncertaintySamples).filter(Shift::moved);
  }

  private static Optional<Shift> shift(
      Optional<BigDecimal> samples, Optional<BigDecimal> uncertainty) {
    return samples.flatMap(s -> uncertainty.map(u -> new Shift(s.doubleValue(), u.doubleValue())));
  }
}
