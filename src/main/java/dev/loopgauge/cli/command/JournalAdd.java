package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.kept.AddJob;
import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.When;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code journal add}. */
@Command(
    sortOptions = false,
    description = {
      "Keep a result that could not be kept when it was measured.",
      "",
      "FILE is what the command printed with --json. Dated by the file's own time."
    },
    footer = {"  loopgauge journal add vocal.json --show 'Harbour, Friday' --when before"})
final class JournalAdd implements Subcommand {
  private final Console console;

  @Parameters(paramLabel = "FILE", description = "The document, JSON.")
  private Path file = Path.of("");

  @Option(names = "--show", paramLabel = "NAME", required = true, description = "The show.")
  private Optional<String> show = Optional.empty();

  @Option(
      names = "--when",
      paramLabel = "WHEN",
      required = true,
      converter = Converters.Day.class,
      description = "Before, during or after the show.")
  private Optional<When> when = Optional.empty();

  @Option(
      names = "--path",
      paramLabel = "NAME",
      description = "The path, where the document names none.")
  private Optional<String> path = Optional.empty();

  @Option(names = "--chain", paramLabel = "FILE", description = "The chain file as it was.")
  private Optional<Path> chain = Optional.empty();

  @Option(names = "--note", paramLabel = "TEXT", description = "What to remember.")
  private Optional<String> note = Optional.empty();

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description = "A setting that moves delays, such as clock=desk. Repeatable.")
  private Map<String, String> setup = new LinkedHashMap<>();

  @Option(names = "--correct", paramLabel = "ID", description = "The entry that this one replaces.")
  private Optional<String> corrected = Optional.empty();

  @Mixin private final JournalPlace place = new JournalPlace();

  JournalAdd(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws JournalException, IOException {
    KeepChoice choice =
        new KeepChoice(
            Optional.of(place.said().orElse("")), show, when, note, setup, corrected, false);
    AddJob job = new AddJob(file, choice, new BudgetChoice(chain, path, 0));
    try (Journal journal = place.openOrBegin(console.environment())) {
      return job.in(journal, place.shortName(console.environment()));
    }
  }
}
