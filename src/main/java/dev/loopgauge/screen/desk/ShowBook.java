package dev.loopgauge.screen.desk;

import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.JournalKeeper;
import dev.loopgauge.job.kept.JournalName;
import dev.loopgauge.job.kept.JournalQueries;
import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.job.kept.PathHistory;
import dev.loopgauge.job.kept.ReportFormat;
import dev.loopgauge.job.kept.ReportSources;
import dev.loopgauge.job.kept.Reporting;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.journal.PathPair;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.journal.When;
import dev.loopgauge.journal.store.Journals;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.kind.KeptFacts;
import dev.loopgauge.screen.state.PastState;
import dev.loopgauge.screen.state.Taken;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.Shift;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;

/**
 * The journal as the screen uses it.
 *
 * @param place which journal; empty for the default one
 * @param environment names the default one
 */
record ShowBook(Optional<String> place, Map<String, String> environment) {
  private static final int MOST_DECIMALS = 3;

  /** Keeps a reading; whether that worked. The person hears why not. */
  boolean keep(String path, Taken taken, Path chain, When when, String show, Person person) {
    KeepChoice choice =
        new KeepChoice(
            place.or(() -> Optional.of("")),
            Optional.of(show),
            Optional.of(when),
            Optional.empty(),
            Map.of(),
            Optional.empty(),
            false);
    BudgetChoice budget = new BudgetChoice(Optional.of(chain), Optional.of(path), 1);
    Answer kept =
        new JournalKeeper(choice, budget, environment, person)
            .measuredAt(taken.at())
            .keep(taken.answer(), taken.card(), Optional.empty());
    return kept.ending() != Ending.NOT_KEPT;
  }

  /**
   * What is known of each path; nothing where there is no journal yet.
   *
   * @throws JournalException when it can't be read
   */
  Map<String, PastState> past(
      List<String> paths, Map<String, Taken> readings, Optional<String> show)
      throws JournalException {
    Map<String, PastState> past = new LinkedHashMap<>();
    if (!exists()) {
      return past;
    }
    try (Journal journal = open()) {
      for (String path : paths) {
        try {
          past.put(
              path,
              PastState.of(
                  new PathHistory(path, Optional.empty(), Optional.empty()).in(journal),
                  before(journal, path, Optional.ofNullable(readings.get(path)), show)));
        } catch (UsageException nothing) {
          // The journal has nothing of this path that could be shown.
        }
      }
    }
    return past;
  }

  private boolean exists() {
    String name = JournalName.of(place, environment);
    return name.startsWith("jdbc:") || Files.exists(Path.of(name));
  }

  private Journal open() throws JournalException {
    return Journals.openExisting(JournalName.of(place, environment), environment);
  }

  private static Optional<String> before(
      Journal journal, String path, Optional<Taken> now, Optional<String> show)
      throws JournalException {
    if (now.isEmpty() || show.isEmpty()) {
      return Optional.empty();
    }
    Selection selection =
        new Selection(show, Optional.of(path), Optional.of(When.BEFORE), OptionalInt.empty());
    List<Heading> kept = new JournalQueries(journal).standing(selection);
    if (kept.isEmpty()) {
      return Optional.empty();
    }
    Heading then = kept.get(kept.size() - 1);
    Optional<Heading> current = Optional.of(heading(path, now.get(), show.get()));
    return new PathPair(Optional.of(path), Optional.of(then), current).shift().map(ShowBook::told);
  }

  private static Heading heading(String path, Taken now, String show) {
    KeptFacts facts = KeptFacts.of(now.document());
    return new Heading(
        UUID.randomUUID(),
        now.at().truncatedTo(ChronoUnit.MILLIS),
        show,
        When.AFTER,
        Optional.of(path),
        facts.outcome(),
        facts.standing(),
        facts.delay().map(ShowBook::logged),
        Optional.empty());
  }

  private static LoggedDelay logged(ShownDelay delay) {
    return new LoggedDelay(
        new Latency(delay.samples(), new SampleRate((int) delay.rateHz())),
        delay.uncertaintySamples());
  }

  private static String told(Shift shift) {
    String by =
        Numbers.signedPlusMinus(shift.samples(), shift.uncertaintySamples(), MOST_DECIMALS)
            + " samples";
    return shift.moved() ? "changed by " + by : "the same (" + by + ")";
  }

  /**
   * The report of a show, as one page.
   *
   * @throws JournalException when the journal can't be read
   * @throws UsageException when it has nothing of the show
   */
  String report(Optional<String> show) throws JournalException {
    try (Journal journal = open()) {
      return new Reporting(ReportSources.ofShow(journal, show, List.of()))
          .answer(Optional.of(ReportFormat.HTML), Optional.empty())
          .document()
          .text();
    }
  }
}
