package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.kept.KeptContents;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.report.logged.CheckDocument;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code journal check}. */
@Command(
    sortOptions = false,
    description = {
      "Read all of the journal and say what is wrong with it.",
      "",
      "Exits with 5 when anything is."
    },
    footer = {"  loopgauge journal check"})
final class JournalCheck implements Subcommand {
  private final Console console;

  @Mixin private final JournalPlace place = new JournalPlace();

  JournalCheck(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws JournalException {
    try (Journal journal = place.open(console.environment())) {
      List<String> wrong = new ArrayList<>(journal.check());
      KeptContents contents = KeptContents.of(journal, place.recordings(console.environment()));
      wrong.addAll(contents.wrong());
      return new Answer(
          wrong.isEmpty() ? Ending.GOOD : Ending.NOT_KEPT,
          CheckDocument.of(journal.size(), contents.last(), wrong, contents.missing()));
    }
  }
}
