package dev.loopgauge.cli.option;

import dev.loopgauge.job.live.LiveChoice;
import dev.loopgauge.job.live.StimulusChoice;
import java.util.Optional;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where the screen plays and records, and what it keeps results under. */
public final class ScreenOptions {
  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description = "A kept profile; other options overrule what it says.")
  private Optional<String> profile = Optional.empty();

  @ArgGroup(validate = false, heading = "%nWhere to play and record:%n")
  private CardOptions card = new CardOptions();

  @Mixin private final ShowOptions kept = new ShowOptions();

  /** What to play and record, and where. */
  public LiveChoice live() {
    return new LiveChoice(
        profile,
        card.choice(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty()),
        StimulusChoice.NONE);
  }

  /** The journal. */
  public Optional<String> journal() {
    return kept.journal().filter(place -> !place.isEmpty());
  }

  /** The show. */
  public Optional<String> show() {
    return kept.show();
  }
}
