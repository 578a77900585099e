package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.PathOptions;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.live.MeasureJob;
import dev.loopgauge.job.live.Site;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Plays, records, and measures the delay of one path. */
@Command(
    sortOptions = false,
    description = {
      "Measure one path and compare it with its budget.",
      "",
      "Channels count from 1. Best patched: send 1 straight to return 1 as the reference, send 2"
          + " into the path and its output to return 2. Then the sound card's own delay cancels."
    },
    footer = {
      "  loopgauge measure --backend java-sound --send 2 --return 2 --reference-send 1"
          + " --reference-return 1 --chain rig.yaml --path vocal-house"
    })
public final class MeasureCommand implements Subcommand {
  private final Site site;

  @Option(
      names = "--calibrate",
      description = "First measure a patch cable, then the path, in one session.")
  private boolean calibrate;

  @Option(
      names = "--tell-apart",
      description =
          "Where several causes fit, set the host to the block size that tells them apart, measure"
              + " again, and set it back; on jack all else is interrupted.")
  private boolean tellApart;

  @Mixin private final PathOptions path = new PathOptions();

  /** A command that runs at a site. */
  public MeasureCommand(Site site) {
    this.site = site;
  }

  @Override
  public Answer answer() throws Exception {
    return new MeasureJob(path.request(), calibrate, tellApart).run(site);
  }
}
