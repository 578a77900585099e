package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.WatchOptions;
import dev.loopgauge.cli.terminal.Colour;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.WatchJson;
import dev.loopgauge.cli.terminal.WatchLines;
import dev.loopgauge.cli.terminal.WatchScreen;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.StopSign;
import dev.loopgauge.job.WatchListener;
import dev.loopgauge.job.live.Site;
import dev.loopgauge.job.live.WatchJob;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Follows the delay of every path through a show. */
@Command(
    sortOptions = false,
    description = {
      "Follow the delay of every path through the show, from the programme itself. Plays nothing.",
      "",
      "Each path's return is compared with the reference return, second by second. What moves is told"
          + " once when it starts and once when it ends, with the causes that fit. Ctrl-C ends it with"
          + " a summary. Exits with 1 if anything moved."
    },
    footer = {
      "  loopgauge watch rig.yaml --profile foh --journal --show 'Harbour, Friday'",
      "  loopgauge watch rig.yaml --metrics 9464 --on-event './tell.sh \"mix 1\"'"
    })
public final class WatchCommand implements Endless, LineByLine {
  private final Site site;
  private final Console console;
  private final StopSign stop;

  @Parameters(paramLabel = "CHAIN", description = "The chain file; its paths say their patch.")
  private Path chain;

  @Mixin private final WatchOptions watch = new WatchOptions();

  @ParentCommand private LoopgaugeCommand program;

  /** A command that runs at a site. */
  public WatchCommand(Site site, Console console) {
    this.site = site;
    this.console = console;
    this.stop = console.unread();
  }

  @Override
  public StopSign stopSign() {
    return stop;
  }

  @Override
  public Answer answer() throws Exception {
    try (WatchOutlets outlets = WatchOutlets.open(screen(), watch.metrics(), watch.onEvent())) {
      return new WatchJob(watch.request(chain)).run(site, outlets.listener(), stop);
    }
  }

  private WatchListener screen() {
    if (program.json) {
      return new WatchJson(console);
    }
    return console.terminal()
        ? new WatchScreen(console, text -> Colour.paint(text, program.colour.on(console)))
        : new WatchLines(console);
  }
}
