package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.kept.RereadJob;
import dev.loopgauge.job.kept.Rereading;
import dev.loopgauge.job.kept.SoundPart;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code journal reread}. */
@Command(
    sortOptions = false,
    description = {
      "Read kept recordings again, where an older version measured the delay by another definition.",
      "",
      "Shows what the present definition changes; the journal stays as it is. Recordings are kept by --keep-capture. Exits with 0 when all numbers stay, 1 when any moves, and 3 when none moves but an older one has no recording to read."
    },
    footer = {"  loopgauge journal reread --show 'Harbour, Friday'"})
final class JournalReread implements Subcommand {
  private final Console console;

  @Mixin private final JournalPlace place = new JournalPlace();

  @Option(names = "--show", paramLabel = "NAME", description = "Only this show's entries.")
  private Optional<String> show = Optional.empty();

  JournalReread(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws JournalException {
    Rereading rereading = new Rereading(place.recordings(console.environment()));
    try (Journal journal = place.open(console.environment())) {
      return SoundPart.of(journal, new RereadJob(show, rereading).in(journal), console);
    }
  }
}
