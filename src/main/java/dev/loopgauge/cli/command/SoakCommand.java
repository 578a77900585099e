package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.PathOptions;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.SoFar;
import dev.loopgauge.job.live.Site;
import dev.loopgauge.job.live.SoakJob;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Measures one path again and again. */
@Command(
    sortOptions = false,
    description = {
      "Measure one path again and again, softly; count lost sound and jumps.",
      "",
      "Plays at -40 dBFS unless --level says otherwise. Enter or Ctrl-C ends it early with what was heard"
          + " so far. Exits with 1 if anything happened."
    },
    footer = {"  loopgauge soak --for 30m --profile foh --chain rig.yaml --path vocal-house"})
public final class SoakCommand implements Stoppable {
  private final Site site;
  private final SoFar soFar = new SoFar();

  @Option(
      names = "--for",
      paramLabel = "TIME",
      required = true,
      converter = Converters.Minutes.class,
      description = "How long, in time of sound: 30s, 30m or 2h.")
  private double minutes;

  @Mixin private final PathOptions path = new PathOptions();

  /** A command that runs at a site. */
  public SoakCommand(Site site) {
    this.site = site;
  }

  @Override
  public SoFar soFar() {
    return soFar;
  }

  @Override
  public Answer answer() throws Exception {
    return new SoakJob(path.request(), minutes).run(site, soFar);
  }
}
