package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.kept.PathHistory;
import dev.loopgauge.job.kept.Rereading;
import dev.loopgauge.job.kept.SoundPart;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code journal history}. */
@Command(
    sortOptions = false,
    description = {"Follow a path over all shows: jumps, odd readings, drift, what else changed."},
    footer = {"  loopgauge journal history --path vocal-house"})
final class JournalHistory implements Subcommand {
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
      Rereading rereading = new Rereading(place.recordings(console.environment()));
      PathHistory history = new PathHistory(path, show, Optional.of(rereading));
      return SoundPart.of(journal, Answer.good(history.in(journal)), console);
    }
  }
}
