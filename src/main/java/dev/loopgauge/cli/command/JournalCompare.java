package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.JournalQueries;
import dev.loopgauge.job.kept.KeptPairs;
import dev.loopgauge.job.kept.Placed;
import dev.loopgauge.job.kept.Rereading;
import dev.loopgauge.job.kept.SoundPart;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.PathPair;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.logged.CompareDocument;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code journal compare}. */
@Command(
    sortOptions = false,
    description = {
      "Compare each path after a show with before it, or with another show.",
      "",
      "Compares delay, polarity, arrivals, lost sound, clocks, level, response, clipping and noise. The last entry of each path counts, corrections in the place of what they correct. Where a path wasn't measured after the show, during stands in. Exits with 0 when all is the same, 1 when anything changed, and 3 when nothing changed but a path could not be compared."
    },
    footer = {"  loopgauge journal compare --show 'Harbour, Friday'"})
final class JournalCompare implements Subcommand {
  private final Console console;

  @Mixin private final JournalPlace place = new JournalPlace();

  @Option(names = "--show", paramLabel = "NAME", required = true, description = "The show.")
  private String show = "";

  @Option(
      names = "--with",
      paramLabel = "NAME",
      description = "An earlier show to compare with, at the same part of the day.")
  private Optional<String> other = Optional.empty();

  @Option(
      names = "--when",
      paramLabel = "WHEN",
      converter = Converters.Day.class,
      description = "With --with: which part of the day (before).")
  private Optional<When> when = Optional.empty();

  JournalCompare(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws JournalException {
    if (when.isPresent() && other.isEmpty()) {
      throw new UsageException(
          "--when goes with --with", "without --with, before is compared with after");
    }
    try (Journal journal = place.open(console.environment())) {
      JournalQueries queries = new JournalQueries(journal);
      CompareDocument document = document(queries);
      return SoundPart.of(journal, new Answer(ending(document), document), console);
    }
  }

  private CompareDocument document(JournalQueries queries) throws JournalException {
    Rereading rereading = new Rereading(place.recordings(console.environment()));
    Placed now = queries.placedShow(show);
    if (other.isEmpty()) {
      return CompareDocument.of(
          When.BEFORE.label(),
          When.AFTER.label(),
          new KeptPairs(queries.journal(), rereading, List.of(now))
              .compared(PathPair.beforeAndAfter(now.standing())));
    }
    When part = when.orElse(When.BEFORE);
    Placed then = queries.placedShow(other.get());
    return CompareDocument.of(
        "then",
        "now",
        new KeptPairs(queries.journal(), rereading, List.of(then, now))
            .compared(PathPair.between(then.standing(), now.standing(), part)));
  }

  private static Ending ending(CompareDocument document) {
    if (document.changed() > 0) {
      return Ending.OUTSIDE;
    }
    boolean open = document.paths().isEmpty() || document.notCompared() > 0;
    return open ? Ending.NOT_TRUSTWORTHY : Ending.GOOD;
  }
}
