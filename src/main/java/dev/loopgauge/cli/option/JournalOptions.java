package dev.loopgauge.cli.option;

import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.journal.When;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that have a measurement kept in the journal. */
public final class JournalOptions extends ShowOptions {
  @Option(
      names = "--when",
      paramLabel = "WHEN",
      converter = Converters.Day.class,
      description = "Before, during or after the show.")
  private Optional<When> when = Optional.empty();

  @Option(names = "--note", paramLabel = "TEXT", description = "What to remember.")
  private Optional<String> note = Optional.empty();

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description = "A setting that moves delays, such as clock=desk. Repeatable.")
  private Map<String, String> setup = new LinkedHashMap<>();

  @Option(names = "--correct", paramLabel = "ID", description = "The entry that this one replaces.")
  private Optional<String> corrected = Optional.empty();

  @Option(
      names = "--keep-capture",
      description = "Keep the recording beside it, as a packed WAV file.")
  private boolean keepCapture;

  /**
   * What was chosen.
   *
   * @throws dev.loopgauge.job.UsageException when something is missing or too much
   */
  public KeepChoice choice() {
    return new KeepChoice(journal(), show(), when, note, setup, corrected, keepCapture);
  }
}
