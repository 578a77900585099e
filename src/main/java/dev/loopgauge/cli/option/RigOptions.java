package dev.loopgauge.cli.option;

import dev.loopgauge.job.live.RigChoice;
import java.util.List;
import picocli.CommandLine.Option;

/** The options of the built-in rig. */
public final class RigOptions {
  @Option(
      names = "--fault",
      paramLabel = "[PATH:]FAULT[@S[-S]]",
      description =
          "What is wrong with the simulated rig, such as block-size=128; truck-mix:inverted is on"
              + " that path alone, inverted@60 from second 60 of what is recorded on, silent@60-70"
              + " for ten seconds. Repeatable; an unknown name lists them all.")
  private List<String> faults = List.of();

  @Option(names = "--seed", paramLabel = "N", description = "Random seed of the simulated rig (1).")
  private long seed = 1;

  /** What was chosen. */
  public RigChoice choice() {
    return new RigChoice(faults, seed);
  }
}
