package dev.loopgauge.job.kept;

import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.journal.When;
import java.util.Map;
import java.util.Optional;

/**
 * Whether and how a result is kept in the journal.
 *
 * @param journal the journal: a file, an address, or "" for the default one; empty to keep nothing
 * @param show the show
 * @param when which part of its day
 * @param note what to remember
 * @param setup settings that move delays, such as clock=desk
 * @param corrected the id of the entry that this one replaces, or how it begins
 * @param keepCapture whether to keep the recording beside the entry
 */
public record KeepChoice(
    Optional<String> journal,
    Optional<String> show,
    Optional<When> when,
    Optional<String> note,
    Map<String, String> setup,
    Optional<String> corrected,
    boolean keepCapture) {
  /** Nothing is kept. */
  public static final KeepChoice NONE =
      new KeepChoice(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Map.of(),
          Optional.empty(),
          false);

  /**
   * Makes sure that all is said that an entry needs, and nothing for an entry that is not asked
   * for.
   *
   * @throws UsageException when it isn't so
   */
  public KeepChoice {
    boolean said =
        show.isPresent()
            || when.isPresent()
            || note.isPresent()
            || corrected.isPresent()
            || keepCapture
            || !setup.isEmpty();
    if (journal.isEmpty() && said) {
      throw new UsageException(
          "--show, --when, --note, --set, --correct and --keep-capture go with --journal",
          "add --journal to keep the result");
    }
    if (journal.isPresent() && (show.filter(name -> !name.isBlank()).isEmpty() || when.isEmpty())) {
      throw new UsageException(
          "--journal needs to know the show and which part of its day it is",
          "for example --journal --show \"Harbour, Friday\" --when before");
    }
  }

  /** Whether the result shall be kept. */
  public boolean asked() {
    return journal.isPresent();
  }

  /** The path to compare with; in the journal a path has a name even without a chain. */
  public Optional<ChosenPath> chosen(BudgetChoice budget) throws ChainFormatException {
    return asked() && budget.chain().isEmpty() ? Optional.empty() : budget.chosen();
  }

  /** Where the journal is that was asked for. */
  String place(Map<String, String> environment) {
    return JournalName.of(journal, environment);
  }
}
