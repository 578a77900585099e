package dev.loopgauge.cli.option;

import dev.loopgauge.job.BudgetChoice;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that name a budget to compare a measurement with. */
public final class BudgetOptions {
  @Option(
      names = "--chain",
      paramLabel = "FILE",
      description = "The chain file to compare with; needs --path.")
  private Optional<Path> chain = Optional.empty();

  @Option(
      names = "--path",
      paramLabel = "NAME",
      description = "The path of the chain file that was measured.")
  private Optional<String> path = Optional.empty();

  @Option(
      names = "--allow-samples",
      paramLabel = "N",
      converter = Converters.Amount.class,
      description = "Extra difference to allow, in samples (1).")
  private double allowSamples = 1;

  /** What was chosen. */
  public BudgetChoice choice() {
    return new BudgetChoice(chain, path, allowSamples);
  }
}
