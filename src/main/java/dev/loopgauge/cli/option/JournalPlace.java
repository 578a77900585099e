package dev.loopgauge.cli.option;

import dev.loopgauge.job.kept.JournalName;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.store.JournalAddress;
import dev.loopgauge.journal.store.Journals;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The option that says which journal to read. */
public class JournalPlace {
  @Option(
      names = "--journal",
      paramLabel = "FILE",
      description =
          "The journal: a file or jdbc:postgresql://HOST/DATABASE (what LOOPGAUGE_JOURNAL names,"
              + " else the default one).")
  private Optional<String> place = Optional.empty();

  /** What was said; empty for the default one. */
  public Optional<String> said() {
    return place;
  }

  /** Where the journal is. */
  public String name(Map<String, String> environment) {
    return JournalName.of(place, environment);
  }

  /** What documents call the journal. */
  public String shortName(Map<String, String> environment) throws JournalException {
    return JournalAddress.of(name(environment)).name();
  }

  /** The folder of the recordings beside the journal. */
  public Path recordings(Map<String, String> environment) throws JournalException {
    return JournalAddress.of(name(environment)).recordings();
  }

  /** Opens the journal, which must be there. */
  public Journal open(Map<String, String> environment) throws JournalException {
    return Journals.openExisting(name(environment), environment);
  }

  /** Opens the journal; a new one where there is none. */
  public Journal openOrBegin(Map<String, String> environment) throws JournalException {
    JournalName.makeFolder(place, environment);
    return Journals.open(name(environment), environment);
  }
}
