package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.kept.JournalQueries;
import dev.loopgauge.job.kept.PlaceNotes;
import dev.loopgauge.job.kept.SoundPart;
import dev.loopgauge.journal.Corrections;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.report.logged.EntryDocument;
import java.util.Set;
import java.util.UUID;
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
      Corrections corrections = journal.corrections();
      UUID shown = entry.heading().id();
      EntryDocument document =
          EntryDocument.of(
              entry,
              JournalQueries.document(entry),
              corrections.newer(shown),
              PlaceNotes.contests(corrections, Set.of(shown)));
      return SoundPart.of(journal, Answer.good(document), console);
    }
  }
}
