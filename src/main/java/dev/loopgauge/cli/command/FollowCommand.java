package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.BudgetOptions;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.JournalOptions;
import dev.loopgauge.cli.option.RecordingOptions;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.ProgressBar;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.recorded.FollowJob;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Follows the delay through a long recording. */
@Command(
    sortOptions = false,
    description = {
      "Follow the delay through a long recording; date its jumps and its drift.",
      "",
      "Windows in which the delay can't be told are left out; these and clipped ones are counted."
    },
    footer = {"  loopgauge follow --window 5 --reference show.wav --return-channel 2"})
public final class FollowCommand implements Subcommand {
  private final Console console;

  @Option(
      names = "--window",
      paramLabel = "S",
      required = true,
      converter = Converters.Positive.class,
      description = "How long each reading is, 0.5 to 30 seconds.")
  private double windowSeconds;

  @Mixin private final RecordingOptions recording = new RecordingOptions();

  @ArgGroup(validate = false, heading = "%nWhat to compare with:%n")
  private BudgetOptions budget = new BudgetOptions();

  @ArgGroup(validate = false, heading = "%nThe record, with --journal:%n")
  private JournalOptions journal = new JournalOptions();

  /** A command on a console. */
  public FollowCommand(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws Exception {
    return new FollowJob(recording.choice(), windowSeconds, budget.choice(), journal.choice())
        .run(console.environment(), console, new ProgressBar(console, "windows"));
  }
}
