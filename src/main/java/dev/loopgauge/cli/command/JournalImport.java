package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.TextFile;
import dev.loopgauge.job.kept.PlaceNotes;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.report.exchange.EntryFile;
import dev.loopgauge.report.exchange.ExchangeException;
import dev.loopgauge.report.exchange.ExportReader;
import dev.loopgauge.report.logged.ImportDocument;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
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
    List<KeptEntry> entries = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    for (Path file : files) {
      EntryFile export = read(file);
      entries.addAll(export.entries());
      notes.addAll(notes(file.getFileName().toString(), export));
    }
    try (Journal journal = place.openOrBegin(console.environment())) {
      int added = journal.take(entries);
      Set<UUID> ids =
          entries.stream().map(kept -> kept.entry().heading().id()).collect(Collectors.toSet());
      notes.addAll(PlaceNotes.contests(journal.corrections(), ids));
      return Answer.good(ImportDocument.of(entries.size(), added, notes));
    }
  }

  private static List<String> notes(String file, EntryFile export) {
    List<String> notes = new ArrayList<>();
    if (!export.saysItsEnd()) {
      notes.add(
          file + " is of an older version, which doesn't say where it ends: count its entries.");
    }
    if (export.leftOut() > 0) {
      notes.add(file + " lacks " + export.leftOut() + " entries that its journal could not read.");
    }
    return notes;
  }

  private static EntryFile read(Path file) throws ExchangeException {
    String text =
        TextFile.read(file, "journal export", MOST_CHARACTERS, "check the name and the folder");
    return ExportReader.read(text, file.toString());
  }
}
