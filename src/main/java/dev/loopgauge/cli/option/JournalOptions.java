package dev.loopgauge.cli.option;

import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.journal.When;
import dev.loopgauge.setup.DataFolder;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that have a measurement kept in the journal. */
public final class JournalOptions {
  /** The environment variable that names another journal. */
  static final String VARIABLE = "LOOPGAUGE_JOURNAL";

  @Option(
      names = "--journal",
      paramLabel = "FILE",
      arity = "0..1",
      fallbackValue = "",
      description = {
        "Keep the result in the journal: the usual one, the one that",
        "LOOPGAUGE_JOURNAL names, or FILE or jdbc:postgresql://HOST/DATABASE."
      })
  public Optional<String> journal = Optional.empty();

  @Option(names = "--show", paramLabel = "NAME", description = "With --journal: the show.")
  public Optional<String> show = Optional.empty();

  @Option(
      names = "--when",
      paramLabel = "WHEN",
      converter = WhenConverter.class,
      description = "With --journal: before, during or after the show.")
  public Optional<When> when = Optional.empty();

  @Option(names = "--note", paramLabel = "TEXT", description = "With --journal: what to remember.")
  public Optional<String> note = Optional.empty();

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description = "With --journal: a setting that moves delays, such as clock=desk. Repeatable.")
  public Map<String, String> setup = new LinkedHashMap<>();

  @Option(
      names = "--correct",
      paramLabel = "ID",
      description = "With --journal: the entry that this one replaces.")
  public Optional<String> corrected = Optional.empty();

  @Option(
      names = "--keep-capture",
      description = "With --journal: keep the recording beside it, as a packed WAV file.")
  public boolean keepCapture;

  /** Whether the result shall be kept. */
  public boolean asked() {
    return journal.isPresent();
  }

  /**
   * Makes sure that all is said that an entry needs, and nothing for an entry that is not asked
   * for.
   *
   * @throws UsageException when it isn't so
   */
  public void check() {
    boolean said =
        show.isPresent()
            || when.isPresent()
            || note.isPresent()
            || corrected.isPresent()
            || keepCapture
            || !setup.isEmpty();
    if (!asked() && said) {
      throw new UsageException(
          "--show, --when, --note, --set, --correct and --keep-capture go with --journal",
          "add --journal to keep the result");
    }
    if (asked() && (show.filter(name -> !name.isBlank()).isEmpty() || when.isEmpty())) {
      throw new UsageException(
          "--journal needs to know the show and which part of its day it is",
          "for example --journal --show \"Harbour, Friday\" --when before");
    }
  }

  /** The path to compare with; in the journal a path has a name even without a chain. */
  public Optional<ChosenPath> chosen(BudgetOptions budget) throws ChainFormatException {
    return asked() && budget.chain.isEmpty() ? Optional.empty() : ChainFile.chosen(budget);
  }

  /** Where the journal is that was asked for. */
  public String place(Map<String, String> environment) {
    return place(journal, environment);
  }

  /** Where a journal is: what was said, else what the environment names, else the usual file. */
  public static String place(Optional<String> said, Map<String, String> environment) {
    return said.filter(place -> !place.isBlank())
        .or(() -> Optional.ofNullable(environment.get(VARIABLE)).filter(place -> !place.isBlank()))
        .orElseGet(() -> DataFolder.of(environment).path().resolve("journal.db").toString());
  }
}
