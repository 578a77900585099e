package dev.loopgauge.cli.option;

import dev.loopgauge.job.live.LiveChoice;
import java.util.Optional;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Option;

/** What all commands that play and record take. */
public final class LiveOptions {
  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description = "A kept profile; other options overrule what it says.")
  private Optional<String> profile = Optional.empty();

  @ArgGroup(validate = false, heading = "%nWhere to play and record:%n")
  private PluggedDeviceOptions device = new PluggedDeviceOptions();

  @ArgGroup(validate = false, heading = "%nWhat to play:%n")
  private StimulusOptions stimulus = new StimulusOptions();

  /** What was chosen. */
  public LiveChoice choice() {
    return new LiveChoice(profile, device.choice(), stimulus.choice());
  }
}
