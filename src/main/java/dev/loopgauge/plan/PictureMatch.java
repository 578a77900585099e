package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.verify.verdict.Aspect;
import dev.loopgauge.verify.verdict.AspectVerdict;
import java.util.Locale;
import java.util.Optional;

/**
 * The sound of a path against its picture.
 *
 * @param path the path
 * @param picture the picture
 * @param rule what it is judged by
 * @param soundEarly how much earlier than the picture the sound comes; negative when later
 */
public record PictureMatch(String path, String picture, PictureRule rule, Latency soundEarly) {
  /**
   * The match of a path whose sound is so late; empty for a path without a picture.
   *
   * @param chain the chain of the path, at the rate of the delay
   */
  public static Optional<PictureMatch> of(
      Chain chain, ChainPath path, Latency sound, PictureRule rule) {
    if (path.picture().isEmpty()) {
      return Optional.empty();
    }
    String name = path.picture().get();
    Latency early = chain.delay(chain.pictures().get(name)).minus(sound);
    return Optional.of(new PictureMatch(path.name(), name, rule, early));
  }

  /** How it stands by the rule, before anything is delayed. */
  public Standing standing() {
    return rule.standing(soundEarly.ms());
  }

  /** How it stands, for the verdict over a path. */
  public AspectVerdict verdict() {
    double early = soundEarly.ms();
    boolean within = standing() != Standing.OVER;
    return AspectVerdict.of(
        Aspect.PICTURE,
        within,
        String.format(
            Locale.ROOT,
            "sound %s by %.1f ms, %s %s (+%.0f to -%.0f ms)",
            early < 0 ? "late" : "early",
            Math.abs(early),
            within ? "within" : "outside",
            rule.title(),
            rule.earlyMs(),
            rule.lateMs()));
  }

  /** What to delay the sound by, so that both meet; nothing where it is late already. */
  public Latency addToSound() {
    return new Latency(Math.max(0, soundEarly.samples()), soundEarly.rate());
  }

  /** What to delay the picture by, so that both meet: sound that is late can't be advanced. */
  public Latency addToPicture() {
    return new Latency(Math.max(0, -soundEarly.samples()), soundEarly.rate());
  }

  /** How far apart the two are, in ms, whichever comes first. */
  public double apartMs() {
    return Math.abs(soundEarly.ms());
  }
}
