package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.LiveOptions;
import dev.loopgauge.cli.option.RigOptions;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.live.CalibrateJob;
import dev.loopgauge.job.live.Site;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Measures a patch cable and keeps the result. */
@Command(
    sortOptions = false,
    description = {
      "Measure a patch cable from --send to --return in place of the path, and keep the result.",
      "",
      "With a reference: the skew of the two pairs of channels. Later measurements with the same"
          + " device, rate, sends and returns take it off and count its uncertainty.",
      "",
      "Without one: the sound card's own delay, for back ends whose delay is the same at each"
          + " opening: jack. It holds for this device, rate, block size and pair of channels.",
      "",
      "With --profile it is written into the profile too."
    },
    footer = {
      "  loopgauge calibrate --profile foh",
      "  loopgauge calibrate --backend jack --send 1 --return 1"
    })
public final class CalibrateCommand implements Subcommand {
  private final Site site;

  @Option(names = "--yes", description = "Play without asking first.")
  private boolean agreed;

  @Mixin private final LiveOptions live = new LiveOptions();

  @ArgGroup(validate = false, heading = "%nThe simulated rig, a cable:%n")
  private RigOptions rig = new RigOptions();

  /** A command that runs at a site. */
  public CalibrateCommand(Site site) {
    this.site = site;
  }

  @Override
  public Answer answer() throws Exception {
    return new CalibrateJob(live.choice(), rig.choice(), agreed).run(site);
  }
}
