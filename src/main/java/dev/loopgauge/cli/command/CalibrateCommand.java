package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.LiveOptions;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.live.CalibrateJob;
import dev.loopgauge.job.live.Site;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Measures a patch cable and keeps the result. */
@Command(
    sortOptions = false,
    description = {
      "Measure a patch cable from --send to --return, and keep its delay.",
      "",
      "For back ends whose delay is the same at each opening: jack. It holds for this device, rate,"
          + " block size and pair of channels. With --profile it is written into the profile too."
    },
    footer = {"  loopgauge calibrate --backend jack --send 1 --return 1"})
public final class CalibrateCommand implements Subcommand {
  private final Site site;

  @Option(names = "--yes", description = "Play without asking first.")
  private boolean agreed;

  @Mixin private final LiveOptions live = new LiveOptions();

  /** A command that runs at a site. */
  public CalibrateCommand(Site site) {
    this.site = site;
  }

  @Override
  public Answer answer() throws Exception {
    return new CalibrateJob(live.choice(), agreed).run(site);
  }
}
