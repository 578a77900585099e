package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.ChannelList;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.ProgressBar;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.recorded.PairsJob;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Finds the delay between every two channels of a recording. */
@Command(
    sortOptions = false,
    description = {
      "Find the delay between every two channels of a recording, by its own sound.",
      "",
      "Exits with 0 when at least one pair has something in common."
    },
    footer = {"  loopgauge pairs choir-mics.wav --channels 1-8"})
public final class PairsCommand implements Subcommand {
  private final Console console;

  @Parameters(paramLabel = "FILE", description = "The recording.")
  private Path file = Path.of("");

  @Option(
      names = "--channels",
      paramLabel = "LIST",
      converter = ChannelList.Converter.class,
      description = "Which channels (all), such as 1-8 or 1,3,5-7.")
  private Optional<ChannelList> channels = Optional.empty();

  @Option(
      names = "--max-delay",
      paramLabel = "SECONDS",
      converter = Converters.Positive.class,
      description = "The longest delay to look for, up to 60 (1).")
  private double maxDelaySeconds = 1;

  /** A command on a console. */
  public PairsCommand(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws Exception {
    return new PairsJob(file, channels.map(ChannelList::numbers), maxDelaySeconds)
        .run(new ProgressBar(console, "pairs"));
  }
}
