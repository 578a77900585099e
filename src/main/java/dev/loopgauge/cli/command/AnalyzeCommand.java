package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.ArrivalOption;
import dev.loopgauge.cli.option.BudgetOptions;
import dev.loopgauge.cli.option.HostCheckOptions;
import dev.loopgauge.cli.option.JournalOptions;
import dev.loopgauge.cli.option.RecordingOptions;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.ProgressBar;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.recorded.AnalyzeJob;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Finds the delay between recorded channels. */
@Command(
    sortOptions = false,
    description = {
      "Find the delay between recorded channels, and compare it with a budget.",
      "",
      "Channels count from 1. Recordings are taken to start at the same instant. The reference may"
          + " be the stimulus or any programme that was recorded along with the return. With several"
          + " return channels the exit code is the worst of them."
    },
    footer = {
      "  loopgauge analyze --reference take.wav --chain rig.yaml --path vocal-house",
      "  loopgauge analyze --reference sent.wav --return came-back.wav --return-channel 2-8"
    })
public final class AnalyzeCommand implements Subcommand {
  private final Console console;

  @Mixin private final RecordingOptions recording = new RecordingOptions();
  @Mixin private final ArrivalOption arrival = new ArrivalOption();

  @Option(
      names = "--bypassed",
      paramLabel = "FILE",
      description = "The same again with the plug-in bypassed: what does it add?")
  private Optional<Path> bypassed = Optional.empty();

  @ArgGroup(validate = false, heading = "%nWhat to compare with:%n")
  private BudgetOptions budget = new BudgetOptions();

  @ArgGroup(validate = false, heading = "%nWhat the host or plug-in shows:%n")
  private HostCheckOptions reported = new HostCheckOptions();

  @ArgGroup(validate = false, heading = "%nThe record, with --journal:%n")
  private JournalOptions journal = new JournalOptions();

  /** A command on a console. */
  public AnalyzeCommand(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws Exception {
    return new AnalyzeJob(
            recording.choice(),
            bypassed,
            arrival.choice(),
            budget.choice(),
            reported.report(),
            journal.choice())
        .run(console.environment(), console, new ProgressBar(console, "channels"));
  }
}
