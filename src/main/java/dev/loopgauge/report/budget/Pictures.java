package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Standing;
import dev.loopgauge.plan.PictureBlock;
import dev.loopgauge.plan.PictureMatch;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.form.Numbers;
import java.util.LinkedHashMap;
import java.util.Map;

/** Sound against picture, in words and for scripts. */
public final class Pictures {
  private Pictures() {}

  /**
   * How it stands by which rule: {@code sound early by 38.2 ms, within EBU R37 (+40 to -60 ms)}.
   */
  public static String standing(PictureMatch match) {
    return apart(match) + ", " + verdict(match.standing()) + " " + rule(match.rule());
  }

  /** What to delay: {@code add 38.2 ms to the sound}. */
  public static String advice(PictureMatch match) {
    if (match.addToPicture().samples() > 0) {
      return "sound can't be advanced: delay the picture by " + ms(match.addToPicture().ms());
    }
    return match.addToSound().samples() > 0
        ? "add " + ms(match.addToSound().ms()) + " to the sound"
        : "nothing to add";
  }

  /** The best block size, and what remains at it. */
  public static String closest(PictureBlock block) {
    return "closest without a delay: block " + block.blockSize() + ", " + apart(block.match());
  }

  /** Who comes first, by how much. */
  static String apart(PictureMatch match) {
    double early = match.soundEarly().samples();
    if (early == 0) {
      return "sound and picture meet";
    }
    return (early > 0 ? "sound early by " : "sound late by ") + ms(match.apartMs());
  }

  /** The match as keys of a document. */
  public static Map<String, Object> json(PictureMatch match) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("name", match.picture());
    json.put("rule", match.rule().label());
    DelayKeys.put(json, "soundEarly", match.soundEarly());
    json.put("standing", match.standing().label());
    DelayKeys.put(json, "addToSound", match.addToSound());
    DelayKeys.put(json, "addToPicture", match.addToPicture());
    return json;
  }

  /** The best block size as keys of a document. */
  public static Map<String, Object> json(PictureBlock block) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("blockSize", block.blockSize());
    json.put("soundEarlyMs", DelayKeys.ms(block.match().soundEarly().ms()));
    return json;
  }

  private static String verdict(Standing standing) {
    return switch (standing) {
      case WITHIN -> "within";
      case CAUTION -> "noticeable but acceptable by";
      case OVER -> "OUTSIDE";
    };
  }

  private static String rule(PictureRule rule) {
    return rule.title()
        + " (+"
        + Numbers.brief(rule.earlyMs(), 1)
        + " to -"
        + Numbers.brief(rule.lateMs(), 1)
        + " ms)";
  }

  private static String ms(double ms) {
    return Numbers.plain(ms, 1) + " ms";
  }
}
