package dev.loopgauge.job.kept;

import dev.loopgauge.job.Person;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.report.logged.Logs;
import java.time.ZonedDateTime;
import java.util.Optional;
import java.util.OptionalInt;

/** Whether this computer's clock is behind the journal's last entry. */
record ClockCheck(Journal journal, Person person) {
  private static final Selection LAST =
      new Selection(Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.of(1));

  /** Says so where it is; what is kept counts as the last all the same. */
  void tell(ZonedDateTime now) throws JournalException {
    for (Heading last : journal.headings(LAST)) {
      if (last.at().isAfter(now)) {
        person.say(
            "CHECK THE CLOCK: the journal's last entry is of %s, and now it is %s."
                .formatted(Logs.brief(last.at()), Logs.brief(now)));
        person.say("  Entries count in the order in which they were kept.");
      }
    }
  }
}
