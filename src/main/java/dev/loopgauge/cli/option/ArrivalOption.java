package dev.loopgauge.cli.option;

import dev.loopgauge.estimate.ArrivalChoice;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** The option that says which arrival is meant where there are several. */
public final class ArrivalOption {
  @Option(
      names = "--arrival",
      paramLabel = "WHICH",
      defaultValue = "undecided",
      converter = Which.class,
      description =
          "Measure the first or the strongest arrival; left out, two within 6 dB leave it open.")
  private ArrivalChoice choice = ArrivalChoice.UNDECIDED;

  /** Which arrival is meant. */
  public ArrivalChoice choice() {
    return choice;
  }

  /** The choice by its label. */
  static final class Which implements ITypeConverter<ArrivalChoice> {
    @Override
    public ArrivalChoice convert(String label) {
      for (ArrivalChoice choice : ArrivalChoice.values()) {
        if (choice.label().equals(label)) {
          return choice;
        }
      }
      throw new TypeConversionException("expected first or strongest, found '" + label + "'");
    }
  }
}
