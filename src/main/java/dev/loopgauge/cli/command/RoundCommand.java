package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.RoundOptions;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.SoFar;
import dev.loopgauge.job.live.RoundJob;
import dev.loopgauge.job.live.Site;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Measures every path of a chain file in one go. */
@Command(
    sortOptions = false,
    description = {
      "Measure every path of a chain file that has a patch, in one go.",
      "",
      "Asks once, lists what will play, and shows each path as it is done. Paths that hear the same"
          + " send are read from one sweep. Ctrl-C keeps what is done; --continue goes on from it."
    },
    footer = {
      "  loopgauge round rig.yaml --profile foh --journal --show 'Harbour, Friday' --when before"
    })
public final class RoundCommand implements Stoppable {
  private final Site site;
  private final SoFar soFar = new SoFar();

  @Parameters(paramLabel = "CHAIN", description = "The chain file; its paths say their patch.")
  private Path chain;

  @Mixin private final RoundOptions round = new RoundOptions();

  /** A command that runs at a site. */
  public RoundCommand(Site site) {
    this.site = site;
  }

  @Override
  public SoFar soFar() {
    return soFar;
  }

  @Override
  public Answer answer() throws Exception {
    return new RoundJob(round.request(chain)).run(site, soFar);
  }
}
