package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.ScreenOptions;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.StopSign;
import dev.loopgauge.job.live.Site;
import dev.loopgauge.screen.ScreenJob;
import dev.loopgauge.screen.desk.ScreenRequest;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows the rig on a page, in any browser. */
@Command(
    sortOptions = false,
    description = {
      "Show the rig on a page: who hears what when, and buttons that measure.",
      "",
      "Prints an address for the browser of this computer and serves it until Ctrl-C. With --share"
          + " others on the network can look, by an address of their own; what they see is sent"
          + " unencrypted."
    },
    footer = {
      "  loopgauge screen rig.yaml --profile foh --show 'Harbour, Friday'",
      "  loopgauge screen loopgauge-demo/1/lantern-theatre.yaml --backend simulated"
    })
public final class ScreenCommand implements Endless {
  private final StopSign stopSign = new StopSign();
  private final Site site;

  @Parameters(paramLabel = "CHAIN", description = "The chain file.")
  private Path chain;

  @Mixin private final ScreenOptions options = new ScreenOptions();

  @Option(names = "--open", description = "Open it in the browser.")
  private boolean open;

  @Option(
      names = "--port",
      paramLabel = "N",
      converter = Converters.Port.class,
      description = "The port to serve it on (${DEFAULT-VALUE}); 0 for any.",
      defaultValue = "4848")
  private int port;

  @Option(names = "--share", description = "Let others on the network look.")
  private boolean share;

  @Option(
      names = "--share-control",
      description = "Let them measure too; somebody at this computer agrees each time.")
  private boolean control;

  /** A command that runs at a site. */
  public ScreenCommand(Site site) {
    this.site = site;
  }

  @Override
  public StopSign stopSign() {
    return stopSign;
  }

  @Override
  public Answer answer() throws Exception {
    ScreenRequest request =
        new ScreenRequest(chain, options.live(), options.journal(), options.show());
    return new ScreenJob(request, port, share, control, open).run(site, stopSign);
  }
}
