package dev.loopgauge.plan;

import dev.loopgauge.chain.Judged;
import dev.loopgauge.chain.ListenerLimits;
import dev.loopgauge.chain.Standing;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One path as it would run at a setting.
 *
 * @param path its name
 * @param routing where it runs
 * @param delay how late it is
 * @param judged what its listener's limits are applied to
 * @param limits how late its listener may hear
 * @param picture how its sound stands to its picture, where it has one
 */
public record Feed(
    String path,
    Routing routing,
    SourcedDelay delay,
    Judged judged,
    ListenerLimits limits,
    Optional<PictureMatch> picture) {
  /**
   * What it breaks, if anything. Sound that is early for its picture breaks nothing, since a delay
   * mends it; sound that is too late for the rule can't be mended.
   */
  Optional<Breach> breach(Setting setting) {
    if (limits.standing(judged.ms()) == Standing.OVER) {
      return Optional.of(Breach.ofListener(setting, this, judged));
    }
    return picture
        .filter(match -> match.addToPicture().samples() > 0)
        .filter(match -> match.standing() == Standing.OVER)
        .map(
            match ->
                new Breach(
                    setting,
                    path,
                    Breach.Kind.PICTURE,
                    match.apartMs(),
                    match.rule().lateMs(),
                    match.rule().title(),
                    Optional.empty()));
  }

  /** How far sound and picture are apart, in ms; 0 without a picture. */
  double pictureApartMs() {
    return picture.map(PictureMatch::apartMs).orElse(0.0);
  }

  /**
   * How much later it could be before its listener's limit is passed, in ms, where there is one.
   */
  public OptionalDouble marginMs() {
    OptionalDouble limit = limits.limitMs();
    return limit.isPresent() ? OptionalDouble.of(limit.getAsDouble() - judged.ms()) : limit;
  }
}
