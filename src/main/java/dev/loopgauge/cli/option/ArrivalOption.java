package dev.loopgauge.cli.option;

import dev.loopgauge.estimate.ArrivalChoice;
import picocli.CommandLine.Option;

/** The option that says which arrival is meant where there are several. */
public final class ArrivalOption {
  @Option(
      names = "--arrival",
      paramLabel = "WHICH",
      converter = Converters.Which.class,
      description =
          "Measure the first or the strongest arrival; left out, two within 6 dB are undecided.")
  private ArrivalChoice choice = ArrivalChoice.UNDECIDED;

  /** Which arrival is meant. */
  public ArrivalChoice choice() {
    return choice;
  }
}
