package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.kept.RelabelJob;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.When;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code journal relabel}. */
@Command(
    sortOptions = false,
    description = {
      "Move an entry to another part of its show's day.",
      "",
      "The old entry stays in the journal; a new one takes its place."
    },
    footer = {"  loopgauge journal relabel 3f2a --when after"})
final class JournalRelabel implements Subcommand {
  private final Console console;

  @Parameters(paramLabel = "ID", description = "The entry's id, or enough of its beginning.")
  private String id = "";

  @Option(
      names = "--when",
      paramLabel = "WHEN",
      required = true,
      converter = Converters.Day.class,
      description = "Before, during or after the show.")
  private Optional<When> when = Optional.empty();

  @Mixin private final JournalPlace place = new JournalPlace();

  JournalRelabel(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws JournalException {
    try (Journal journal = place.open(console.environment())) {
      return new RelabelJob(id, when.orElseThrow()).in(journal);
    }
  }
}
