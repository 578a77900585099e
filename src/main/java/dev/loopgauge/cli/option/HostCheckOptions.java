package dev.loopgauge.cli.option;

import dev.loopgauge.job.HostReport;
import java.math.BigDecimal;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that say what a host or plug-in reports. */
public final class HostCheckOptions {
  @Option(
      names = "--reported-samples",
      paramLabel = "N",
      converter = Converters.Amount.class,
      description = "Delay shown by the host or plug-in; checked against the measurement.")
  private Optional<Double> samples = Optional.empty();

  @Option(
      names = "--reported-ms",
      paramLabel = "MS",
      converter = Converters.Written.class,
      description = "The same in ms, with the digits that are shown.")
  private Optional<BigDecimal> ms = Optional.empty();

  /** What was said. */
  public HostReport report() {
    return new HostReport(samples, ms);
  }
}
