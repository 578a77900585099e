package dev.loopgauge.cli.option;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that name a budget to hold a measurement against. */
public final class BudgetOptions {
  @Option(
      names = "--chain",
      paramLabel = "FILE",
      description = "The chain file to compare with; needs --path.")
  public Optional<Path> chain = Optional.empty();

  @Option(
      names = "--path",
      paramLabel = "NAME",
      description = "The path of the chain file that was measured.")
  public Optional<String> path = Optional.empty();

  @Option(
      names = "--allow-samples",
      paramLabel = "N",
      defaultValue = "1",
      converter = Converters.Amount.class,
      description = "Let pass a difference of so many samples (${DEFAULT-VALUE}).")
  public double allowSamples;
}
