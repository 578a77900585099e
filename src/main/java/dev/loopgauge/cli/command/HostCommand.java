package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.PathOptions;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.live.HostJob;
import dev.loopgauge.job.live.Site;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Checks what a host or plug-in reports. */
@Command(
    sortOptions = false,
    description = {
      "Check the latency that a host or plug-in reports against the measurement.",
      "",
      "--through asks the audio server's graph what a program reports. --states steps through a"
          + " plug-in's states; each is measured and compared with the latency it reports at that"
          + " moment. --reported-samples checks one number that you read off the host."
    },
    footer = {
      "  loopgauge host --profile foh --states active,bypassed,reloaded",
      "  loopgauge host --backend jack --through eq-host"
    })
public final class HostCommand implements Subcommand {
  private final Site site;

  @Option(
      names = "--through",
      paramLabel = "CLIENT",
      description =
          "On jack: through this program's ports (send 1, return 1 unless named), compared with the"
              + " latency that the server's graph reports for it.")
  private Optional<String> through = Optional.empty();

  @Option(
      names = "--states",
      paramLabel = "LIST",
      split = ",",
      description = "The plug-in's states to step through, such as active,bypassed,reloaded.")
  private List<String> states = List.of();

  @Option(
      names = "--witness-return",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "With --states: another channel of the host; does it move too?")
  private Optional<Integer> witnessReturn = Optional.empty();

  @Option(
      names = "--witness-send",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "What feeds it (the path's own send).")
  private Optional<Integer> witnessSend = Optional.empty();

  @Mixin private final PathOptions path = new PathOptions();

  /** A command that runs at a site. */
  public HostCommand(Site site) {
    this.site = site;
  }

  @Override
  public Answer answer() throws Exception {
    return new HostJob(path.request(), through, states, witnessReturn, witnessSend).run(site);
  }
}
