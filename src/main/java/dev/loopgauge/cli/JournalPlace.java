package dev.loopgauge.cli;

import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.store.Journals;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The option that says which journal to read. */
final class JournalPlace {
  @Option(
      names = "--journal",
      paramLabel = "FILE",
      description = {
        "The journal: a file or jdbc:postgresql://HOST/DATABASE (the one that",
        "LOOPGAUGE_JOURNAL names, or else the usual one)."
      })
  private Optional<String> place = Optional.empty();

  /** Opens the journal, which must be there. */
  Journal open(Map<String, String> environment) throws JournalException {
    return Journals.openExisting(JournalOptions.place(place, environment), environment);
  }

  /** Opens the journal; a new one where there is none. */
  Journal openOrBegin(Map<String, String> environment) throws JournalException {
    return Journals.open(JournalOptions.place(place, environment), environment);
  }
}
