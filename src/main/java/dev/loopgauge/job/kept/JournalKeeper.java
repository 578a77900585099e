package dev.loopgauge.job.kept;

import dev.loopgauge.capture.FileTrouble;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.NewEntries.Result;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.KeptCapture;
import dev.loopgauge.journal.store.JournalAddress;
import java.io.IOException;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Keeps what a command found in the journal, if that was asked. */
public final class JournalKeeper {
  private final KeepChoice choice;
  private final BudgetChoice budget;
  private final Map<String, String> environment;
  private final Person person;
  private final Optional<ZonedDateTime> measured;
  private final Optional<HeldJournal> held;

  /**
   * A keeper for one job.
   *
   * @param choice whether and how to keep
   * @param budget what was compared with
   * @param environment names the journal and how to reach it, where nothing else does
   * @param person hears what was kept, or why not
   */
  public JournalKeeper(
      KeepChoice choice, BudgetChoice budget, Map<String, String> environment, Person person) {
    this(choice, budget, environment, person, Optional.empty(), Optional.empty());
  }

  private JournalKeeper(
      KeepChoice choice,
      BudgetChoice budget,
      Map<String, String> environment,
      Person person,
      Optional<ZonedDateTime> measured,
      Optional<HeldJournal> held) {
    this.choice = choice;
    this.budget = budget;
    this.environment = environment;
    this.person = person;
    this.measured = measured;
    this.held = held;
  }

  /** The same for what was measured some time ago. */
  public JournalKeeper measuredAt(ZonedDateTime then) {
    return new JournalKeeper(choice, budget, environment, person, Optional.of(then), held);
  }

  /** The same in a journal that is held open for the next result. */
  public JournalKeeper in(HeldJournal journal) {
    return new JournalKeeper(choice, budget, environment, person, measured, Optional.of(journal));
  }

  /**
   * Keeps an answer. What can't be kept is still the answer, but it ends as not kept, and the
   * person hears why. A recording that can't be kept leaves the entry without one.
   *
   * @param card what was measured with, where there was a session
   * @param recording the recording to keep beside the journal, if that was asked
   */
  public Answer keep(
      Answer answer, Optional<SessionInfo> card, Optional<PackedRecording> recording) {
    if (!choice.asked()) {
      return answer;
    }
    KeptParts parts = new KeptParts(answer.document(), budget.path());
    try {
      JournalAddress address = JournalAddress.of(choice.place(environment));
      JournalName.makeFolder(choice.journal(), environment);
      Optional<KeptCapture> capture = recording.flatMap(packed -> capture(packed, address));
      List<Result> results = parts.results(address.name());
      append(address, results, card, capture);
      boolean whole = recording.isPresent() == capture.isPresent();
      return new Answer(
          whole ? answer.ending() : Ending.NOT_KEPT, parts.keptAs(results, address.name()));
    } catch (JournalException e) {
      return notKept(parts, e.getMessage(), e.hint());
    } catch (UsageException e) {
      return notKept(parts, e.getMessage(), e.hint());
    }
  }

  private Optional<KeptCapture> capture(PackedRecording recording, JournalAddress address) {
    try {
      return Optional.of(recording.keep(address.recordings()));
    } catch (IOException e) {
      sayNotKept(
          "the recording can't be written: " + FileTrouble.reason(e),
          "is the disk full, may you write beside the journal?");
    } catch (AudioFileException e) {
      sayNotKept("the recording: " + e.getMessage(), e.hint());
    }
    return Optional.empty();
  }

  private void append(
      JournalAddress address,
      List<Result> results,
      Optional<SessionInfo> card,
      Optional<KeptCapture> capture)
      throws JournalException {
    ZonedDateTime now = ZonedDateTime.now(ZoneId.systemDefault());
    ZonedDateTime at = measured.orElse(now);
    use(
        address,
        journal -> {
          Optional<UUID> corrected = new Correction(choice, journal).of(results);
          NewEntries entries = new NewEntries(choice, budget, at, card, capture, corrected);
          List<Entry> made = results.stream().map(entries::of).toList();
          new ClockCheck(journal, person).tell(now);
          journal.append(made);
        });
    results.forEach(
        result -> person.say("Kept in the journal as " + Heading.shortened(result.id()) + "."));
  }

  private void use(JournalAddress address, HeldJournal.Work work) throws JournalException {
    if (held.isPresent()) {
      held.get().use(address, work);
      return;
    }
    try (HeldJournal journal = new HeldJournal(environment)) {
      journal.use(address, work);
    }
  }

  private Answer notKept(KeptParts parts, String text, String hint) {
    sayNotKept(text, hint);
    person.say("  or   keep what --json printed: `loopgauge journal add FILE`");
    return new Answer(Ending.NOT_KEPT, parts.notKept(text));
  }

  private void sayNotKept(String text, String hint) {
    person.say("NOT KEPT: " + text);
    person.say("  try  " + hint);
  }
}
