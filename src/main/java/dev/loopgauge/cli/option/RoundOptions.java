package dev.loopgauge.cli.option;

import dev.loopgauge.job.live.LiveChoice;
import dev.loopgauge.job.live.RoundRequest;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a round over all paths of a chain file takes. */
public final class RoundOptions {
  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description = "A kept profile; other options overrule what it says.")
  private Optional<String> profile = Optional.empty();

  @ArgGroup(validate = false, heading = "%nWhere to play and record:%n")
  private DeviceOptions device = new DeviceOptions();

  @ArgGroup(validate = false, heading = "%nWhat to play:%n")
  private StimulusOptions stimulus = new StimulusOptions();

  @ArgGroup(validate = false, heading = "%nThe record, with --journal:%n")
  private JournalOptions journal = new JournalOptions();

  @Option(
      names = "--continue",
      description = "Go on with the paths that the journal has nothing of yet.")
  private boolean goesOn;

  @ArgGroup(validate = false, heading = "%nThe simulated rig, with --backend simulated:%n")
  private RigOptions rig = new RigOptions();

  @Mixin private final ArrivalOption arrival = new ArrivalOption();

  @Option(
      names = "--allow-samples",
      paramLabel = "N",
      converter = Converters.Amount.class,
      description = "Extra difference to allow on each path, in samples (1).")
  private double allowSamples = 1;

  @Option(names = "--yes", description = "Play without asking first.")
  private boolean agreed;

  /** What was chosen. */
  public RoundRequest request(Path chain) {
    return new RoundRequest(
        chain,
        new LiveChoice(profile, device.choice(), stimulus.choice()),
        allowSamples,
        rig.choice(),
        arrival.choice(),
        journal.choice(),
        goesOn,
        agreed);
  }
}
