package dev.loopgauge.cli.option;

import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.ReportedDelay;
import java.math.BigDecimal;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that say what a host or plug-in reports. */
public final class HostCheckOptions {
  @Option(
      names = "--reported-samples",
      paramLabel = "N",
      converter = Converters.Amount.class,
      description = "The delay that host or plug-in report: is it true?")
  private Optional<Double> samples = Optional.empty();

  @Option(
      names = "--reported-ms",
      paramLabel = "MS",
      converter = Converters.Written.class,
      description = "The same in ms, with the digits that are shown.")
  private Optional<BigDecimal> ms = Optional.empty();

  /**
   * What is reported, for readings at a rate; empty if nothing is.
   *
   * @throws UsageException when it is given both ways
   */
  public Optional<ReportedDelay> reported(SampleRate rate) {
    if (samples.isPresent() && ms.isPresent()) {
      throw new UsageException(
          "expected --reported-samples or --reported-ms, found both", "give what the host shows");
    }
    return samples
        .map(ReportedDelay::ofSamples)
        .or(() -> ms.map(given -> ReportedDelay.ofMs(given, rate)));
  }

  /** The reported delay held against all that was measured; empty without either. */
  public Optional<HostCheck> check(Estimate estimate) {
    return estimate instanceof Estimate.Found found
        ? reported(found.measurement().delay().rate())
            .map(reported -> HostCheck.of(found.measurement(), reported))
        : Optional.empty();
  }
}
