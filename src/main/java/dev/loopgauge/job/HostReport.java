package dev.loopgauge.job;

import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.ReportedDelay;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * The delay that a host or plug-in shows, in one of two units.
 *
 * @param samples in samples, 0 or more
 * @param ms in milliseconds, with the digits that are shown
 */
public record HostReport(Optional<Double> samples, Optional<BigDecimal> ms) {
  /** Nothing is reported. */
  public static final HostReport NONE = new HostReport(Optional.empty(), Optional.empty());

  /**
   * What is reported, for readings at a rate; empty if nothing is.
   *
   * @throws UsageException when it is given both ways
   */
  public Optional<ReportedDelay> at(SampleRate rate) {
    if (samples.isPresent() && ms.isPresent()) {
      throw new UsageException(
          "expected --reported-samples or --reported-ms, found both", "give what the host shows");
    }
    if (samples.isPresent()) {
      return Optional.of(ReportedDelay.ofSamples(samples.get()));
    }
    return ms.isPresent() ? Optional.of(ReportedDelay.ofMs(ms.get(), rate)) : Optional.empty();
  }

  /** The reported delay checked against all that was measured; empty without either. */
  public Optional<HostCheck> check(Estimate estimate) {
    if (!(estimate instanceof Estimate.Found found)) {
      return Optional.empty();
    }
    Optional<ReportedDelay> reported = at(found.measurement().delay().rate());
    return reported.isPresent()
        ? Optional.of(HostCheck.of(found.measurement(), reported.get()))
        : Optional.empty();
  }
}
