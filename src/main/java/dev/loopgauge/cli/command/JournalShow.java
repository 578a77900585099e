package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.kept.JournalQueries;
import dev.loopgauge.job.kept.SoundPart;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.report.logged.EntryDocument;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code journal show}. */
@Command(
    sortOptions = false,
    description = {"Show all of one entry."},
    footer = {"  loopgauge journal show 3f2a"})
final class JournalShow implements Subcommand {
  private final Console console;

  @Parameters(paramLabel = "ID", description = "The entry's id, or enough of its beginning.")
  private String id = "";

  @Mixin private final JournalPlace place = new JournalPlace();

  JournalShow(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws JournalException {
    try (Journal journal = place.open(console.environment())) {
      Entry entry = new JournalQueries(journal).entry(id);
      EntryDocument document =
          EntryDocument.of(
              entry,
              JournalQueries.document(entry),
              Optional.ofNullable(journal.corrections().get(entry.heading().id())));
      return SoundPart.of(journal, Answer.good(document), console);
    }
  }
}
