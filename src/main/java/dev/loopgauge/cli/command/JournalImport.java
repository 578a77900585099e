package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.TextFile;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.report.exchange.EntryFile;
import dev.loopgauge.report.exchange.ExchangeException;
import dev.loopgauge.report.logged.ImportDocument;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code journal import}. */
@Command(
    sortOptions = false,
    description = {
      "Add the entries that `journal export` wrote: all of them, or none.",
      "",
      "Entries that are there already are passed over."
    },
    footer = {"  loopgauge journal import friday.csv"})
final class JournalImport implements Subcommand {
  private static final int MOST_CHARACTERS = 500_000_000;

  private final Console console;

  @Parameters(paramLabel = "FILE", arity = "1..*", description = "Exports, CSV or JSON.")
  private List<Path> files = List.of();

  @Mixin private final JournalPlace place = new JournalPlace();

  JournalImport(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws JournalException, ExchangeException {
    List<Entry> entries = new ArrayList<>();
    for (Path file : files) {
      entries.addAll(read(file));
    }
    try (Journal journal = place.openOrBegin(console.environment())) {
      int added = journal.append(entries);
      return Answer.good(ImportDocument.of(entries.size(), added));
    }
  }

  private static List<Entry> read(Path file) throws ExchangeException {
    String text =
        TextFile.read(file, "journal export", MOST_CHARACTERS, "check the name and the folder");
    return EntryFile.read(text, file.toString());
  }
}
