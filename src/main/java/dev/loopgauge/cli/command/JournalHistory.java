package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.JournalQueries;
import dev.loopgauge.job.kept.KeptPairs;
import dev.loopgauge.job.kept.PathAspects;
import dev.loopgauge.job.kept.SoundPart;
import dev.loopgauge.journal.Cause;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.History;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.report.logged.HistoryDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code journal history}. */
@Command(
    sortOptions = false,
    description = {"Follow a path over all shows: jumps, odd readings, drift, what else changed."},
    footer = {"  loopgauge journal history --path vocal-house"})
final class JournalHistory implements Subcommand {
  private static final int MOST_EXPLAINED = 5;

  private final Console console;

  @Mixin private final JournalPlace place = new JournalPlace();

  @Option(names = "--path", paramLabel = "NAME", required = true, description = "The path.")
  private String path = "";

  @Option(names = "--show", paramLabel = "NAME", description = "Within this show only.")
  private Optional<String> show = Optional.empty();

  JournalHistory(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws JournalException {
    try (Journal journal = place.open(console.environment())) {
      JournalQueries logbook = new JournalQueries(journal);
      Selection selection =
          new Selection(show, Optional.of(path), Optional.empty(), OptionalInt.empty());
      List<Heading> found = logbook.standing(selection);
      if (found.isEmpty()) {
        throw logbook.unknown("path", path, Heading::path);
      }
      History history =
          History.of(found)
              .orElseThrow(
                  () ->
                      new UsageException(
                          "no entry of path '" + path + "' has a trustworthy number",
                          "`loopgauge journal list --path` shows them"));
      HistoryDocument document =
          HistoryDocument.of(
              path, history, causes(journal, history), PathAspects.changed(journal, path, show));
      return SoundPart.of(journal, Answer.good(document), console);
    }
  }

  private static List<List<Cause>> causes(Journal journal, History history)
      throws JournalException {
    List<List<Cause>> causes = new ArrayList<>();
    int steps = history.steps().size();
    for (History.Step step : history.steps().subList(Math.max(0, steps - MOST_EXPLAINED), steps)) {
      causes.add(KeptPairs.causes(journal, step.before(), step.after()));
    }
    return causes;
  }
}
