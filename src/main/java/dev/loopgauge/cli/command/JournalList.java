package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.kept.JournalQueries;
import dev.loopgauge.job.kept.PlaceNotes;
import dev.loopgauge.job.kept.SoundPart;
import dev.loopgauge.journal.Corrections;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.logged.JournalListDocument;
import dev.loopgauge.report.logged.ShowsDocument;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code journal list}. */
@Command(
    sortOptions = false,
    description = {"List the last entries, or the shows."},
    footer = {"  loopgauge journal list --last 50"})
final class JournalList implements Subcommand {
  private static final int USUAL = 20;

  private final Console console;

  @Mixin private final JournalPlace place = new JournalPlace();

  @Option(names = "--show", paramLabel = "NAME", description = "Only the entries of this show.")
  private Optional<String> show = Optional.empty();

  @Option(names = "--path", paramLabel = "NAME", description = "Only those of this path.")
  private Optional<String> path = Optional.empty();

  @Option(
      names = "--when",
      paramLabel = "WHEN",
      converter = Converters.Day.class,
      description = "Only those before, during or after the show.")
  private Optional<When> when = Optional.empty();

  @Option(
      names = "--last",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "How many of them, the last ones (20).")
  private Optional<Integer> last = Optional.empty();

  @Option(names = "--shows", description = "List the shows instead.")
  private boolean shows;

  JournalList(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws JournalException {
    try (Journal journal = place.open(console.environment())) {
      return SoundPart.of(journal, Answer.good(document(journal)), console);
    }
  }

  private Document document(Journal journal) throws JournalException {
    if (shows) {
      return ShowsDocument.of(journal.headings(Selection.ALL));
    }
    int most = last.orElse(USUAL);
    List<Heading> found =
        journal.headings(new Selection(show, path, when, OptionalInt.of(most + 1)));
    if (found.isEmpty() && show.isPresent()) {
      new JournalQueries(journal).show(show.get());
    }
    boolean all = found.size() <= most;
    List<Heading> latest = found.subList(all ? 0 : found.size() - most, found.size());
    Corrections corrections = journal.corrections();
    return JournalListDocument.of(latest, corrections, all, PlaceNotes.listed(latest, corrections));
  }
}
