package dev.loopgauge.cli.option;

import dev.loopgauge.cli.terminal.Refusals;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.StimulusKind;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that say what to play. What is left out comes from a profile, or is the default. */
public final class StimulusOptions {
  /** The loudest peak without {@code --loud}, in dBFS. */
  static final double LOUDEST_DBFS = -6;

  private static final double LOW_DBFS = -40;

  private static final MeasurementPlan USUAL =
      new MeasurementPlan(new PlayedStimulus(StimulusKind.SWEEP, 1, -20), 3, 0.5);

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
      description = "The longest delay to look for, up to 10 (0.5).")
  private Optional<Double> maxDelaySeconds = Optional.empty();

  /**
   * What to play.
   *
   * @throws UsageException when a value is out of range, or it would be loud and that wasn't
   *     allowed
   */
  public MeasurementPlan plan(Optional<Profile> profile) {
    MeasurementPlan usual = profile.map(Profile::plan).orElse(USUAL);
    PlayedStimulus stimulus = usual.stimulus();
    MeasurementPlan plan =
        Refusals.asUsage(
            () ->
                new MeasurementPlan(
                    new PlayedStimulus(
                        kind.orElse(stimulus.kind()),
                        seconds.orElse(stimulus.seconds()),
                        levelDbfs.orElse(stimulus.levelDbfs())),
                    repeats.orElse(usual.repeats()),
                    maxDelaySeconds.orElse(usual.maxDelaySeconds())));
    if (plan.stimulus().levelDbfs() > LOUDEST_DBFS && !loud) {
      throw new UsageException(
          "expected a level of at most -6 dBFS, found " + plan.stimulus().levelDbfs() + " dBFS",
          "--loud allows it, for a path with nothing at its end that sounds");
    }
    return plan;
  }

  /** What to play for a long time: the same at -40 dBFS, unless a level was asked for. */
  public MeasurementPlan lowPlan(Optional<Profile> profile) {
    MeasurementPlan plan = plan(profile);
    PlayedStimulus stimulus = plan.stimulus();
    double level = levelDbfs.orElse(Math.min(stimulus.levelDbfs(), LOW_DBFS));
    return new MeasurementPlan(
        new PlayedStimulus(stimulus.kind(), stimulus.seconds(), level),
        plan.repeats(),
        plan.maxDelaySeconds());
  }
}
