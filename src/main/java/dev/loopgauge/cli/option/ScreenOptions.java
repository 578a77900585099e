package dev.loopgauge.cli.option;

import dev.loopgauge.job.live.LiveChoice;
import dev.loopgauge.job.live.StimulusChoice;
import java.util.Optional;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where the screen plays and records, and what it keeps results under. */
public final class ScreenOptions {
  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description = "A kept profile; other options overrule what it says.")
  private Optional<String> profile = Optional.empty();

  @Mixin private final CardOptions card = new CardOptions();

  @Option(
      names = "--journal",
      paramLabel = "FILE",
      arity = "0..1",
      fallbackValue = "",
      description =
          "The journal to keep results in: FILE or jdbc:postgresql://HOST/DATABASE (what"
              + " LOOPGAUGE_JOURNAL names, else the default one).")
  private Optional<String> journal = Optional.empty();

  @Option(
      names = "--show",
      paramLabel = "NAME",
      description = "The show to keep results under; the page asks for it otherwise.")
  private Optional<String> show = Optional.empty();

  /** What to play and record, and where. */
  public LiveChoice live() {
    return new LiveChoice(
        profile,
        card.choice(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty()),
        StimulusChoice.NONE);
  }

  /** The journal. */
  public Optional<String> journal() {
    return journal.filter(place -> !place.isEmpty());
  }

  /** The show. */
  public Optional<String> show() {
    return show;
  }
}
