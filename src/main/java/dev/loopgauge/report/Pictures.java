package dev.loopgauge.report;

import dev.loopgauge.chain.Standing;
import dev.loopgauge.plan.PictureBlock;
import dev.loopgauge.plan.PictureMatch;
import dev.loopgauge.plan.PictureRule;
import java.util.LinkedHashMap;
import java.util.Map;

/** Sound against picture, in words and for scripts. */
final class Pictures {
  private static final int SAMPLE_DECIMALS = 4;
  private static final int MS_DECIMALS = 6;

  private Pictures() {}

  /**
   * How it stands by which rule: {@code sound early by 38.2 ms, within EBU R37 (+40 to -60 ms)}.
   */
  static String standing(PictureMatch match) {
    return apart(match) + ", " + verdict(match.standing()) + " " + rule(match.rule());
  }

  /** What to delay: {@code add 38.2 ms to the sound}. */
  static String advice(PictureMatch match) {
    if (match.addToPicture().samples() > 0) {
      return "sound can't be advanced: delay the picture by " + ms(match.addToPicture().ms());
    }
    return match.addToSound().samples() > 0
        ? "add " + ms(match.addToSound().ms()) + " to the sound"
        : "nothing to add";
  }

  /** The best block size, and what remains at it. */
  static String closest(PictureBlock block) {
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
  static Map<String, Object> json(PictureMatch match) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("name", match.picture());
    json.put("rule", match.rule().label());
    json.put("soundEarlySamples", Numbers.rounded(match.soundEarly().samples(), SAMPLE_DECIMALS));
    json.put("soundEarlyMs", Numbers.rounded(match.soundEarly().ms(), MS_DECIMALS));
    json.put("standing", match.standing().label());
    json.put("addToSoundSamples", Numbers.rounded(match.addToSound().samples(), SAMPLE_DECIMALS));
    json.put("addToSoundMs", Numbers.rounded(match.addToSound().ms(), MS_DECIMALS));
    json.put("addToPictureMs", Numbers.rounded(match.addToPicture().ms(), MS_DECIMALS));
    return json;
  }

  /** The best block size as keys of a document. */
  static Map<String, Object> json(PictureBlock block) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("blockSize", block.blockSize());
    json.put("soundEarlyMs", Numbers.rounded(block.match().soundEarly().ms(), MS_DECIMALS));
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
