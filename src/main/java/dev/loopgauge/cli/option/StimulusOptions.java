package dev.loopgauge.cli.option;

import dev.loopgauge.job.live.StimulusChoice;
import dev.loopgauge.signal.StimulusKind;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that say what to play. What is left out comes from a profile, or is the default. */
public final class StimulusOptions {
  @Option(
      names = "--stimulus",
      paramLabel = "KIND",
      converter = Converters.Kind.class,
      description = "click, sweep or mls (sweep).")
  private Optional<StimulusKind> kind = Optional.empty();

  @Option(
      names = "--seconds",
      paramLabel = "S",
      converter = Converters.Positive.class,
      description = "How long it lasts (1).")
  private Optional<Double> seconds = Optional.empty();

  @Option(
      names = "--level",
      paramLabel = "DBFS",
      converter = Converters.Finite.class,
      description = "Its peak level (-20); above -6 only with --loud.")
  private Optional<Double> levelDbfs = Optional.empty();

  @Option(names = "--loud", description = "Allow a level above -6 dBFS.")
  private boolean loud;

  @Option(
      names = "--repeat",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "How many times it is played (3).")
  private Optional<Integer> repeats = Optional.empty();

  @Option(
      names = "--max-delay",
      paramLabel = "SECONDS",
      converter = Converters.Positive.class,
      description =
          "The longest delay to look for, up to 10 (0.2; twice the path's budget and 0.1 where"
              + " that is more).")
  private Optional<Double> maxDelaySeconds = Optional.empty();

  /** What was chosen. */
  StimulusChoice choice() {
    return new StimulusChoice(kind, seconds, levelDbfs, loud, repeats, maxDelaySeconds);
  }
}
