package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.plan.PictureBlock;
import dev.loopgauge.plan.PictureBlocks;
import dev.loopgauge.plan.PictureMatch;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;

/**
 * Sound against picture, as documents hold it.
 *
 * @param name the picture
 * @param rule what it is judged by
 * @param closestBlock the block size that would bring them closest, where it matters
 */
public record PictureRecord(
    Optional<String> name,
    Optional<PictureRule> rule,
    Optional<BigDecimal> soundEarlySamples,
    BigDecimal soundEarlyMs,
    Optional<Standing> standing,
    Optional<BigDecimal> addToSoundSamples,
    Optional<BigDecimal> addToSoundMs,
    Optional<BigDecimal> addToPictureSamples,
    Optional<BigDecimal> addToPictureMs,
    Optional<BlockRecord> closestBlock)
    implements Sparse {
  /** A block size and how early the sound is at it. */
  public record BlockRecord(int blockSize, BigDecimal soundEarlyMs) {
    private static Optional<BlockRecord> of(Optional<PictureBlock> block) {
      return block.isPresent()
          ? Optional.of(
              new BlockRecord(
                  block.get().blockSize(), Written.ms(block.get().match().soundEarly().ms())))
          : Optional.empty();
    }
  }

  /** Of a path of the chain; empty for one without a picture. */
  static Optional<PictureRecord> of(
      Chain chain, PathBudget budget, PictureRule rule, PictureBlocks blocks) {
    ChainPath path = chain.path(budget.name());
    Optional<PictureMatch> match = PictureMatch.of(chain, path, budget.delay(), rule);
    return match.isPresent()
        ? Optional.of(of(match.get(), blocks.closest(path.name())))
        : Optional.empty();
  }

  /** Of a match and the best block size. */
  public static PictureRecord of(PictureMatch match, Optional<PictureBlock> closest) {
    return new PictureRecord(
        Optional.of(match.picture()),
        Optional.of(match.rule()),
        Optional.of(Written.samples(match.soundEarly().samples())),
        Written.ms(match.soundEarly().ms()),
        Optional.of(match.standing()),
        Optional.of(Written.samples(match.addToSound().samples())),
        Optional.of(Written.ms(match.addToSound().ms())),
        Optional.of(Written.samples(match.addToPicture().samples())),
        Optional.of(Written.ms(match.addToPicture().ms())),
        BlockRecord.of(closest));
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("closestBlock");
  }

  /** Whether the rule is broken. */
  boolean isOver() {
    return standing.orElse(null) == Standing.OVER;
  }

  /** The rule's name. */
  String title() {
    return rule.isPresent() ? rule.get().title() : "its rule";
  }

  /**
   * How it stands by which rule: {@code sound early by 38.2 ms, within EBU R37 (+40 to -60 ms)}.
   */
  public String told() {
    String verdict = standing.isPresent() ? verdict(standing.get()) : "against";
    return apart() + ", " + verdict + " " + title() + (rule.isPresent() ? range(rule.get()) : "");
  }

  private static String range(PictureRule rule) {
    return " (+"
        + (Numbers.brief(rule.earlyMs(), 1) + " to -")
        + (Numbers.brief(rule.lateMs(), 1) + " ms)");
  }

  /** What to delay: {@code add 38.2 ms to the sound}. */
  public String advice() {
    BigDecimal picture = addToPictureMs.orElse(BigDecimal.ZERO);
    if (picture.signum() > 0) {
      return "sound can't be advanced: delay the picture by " + ms(picture);
    }
    BigDecimal sound = addToSoundMs.orElse(BigDecimal.ZERO);
    return sound.signum() > 0 ? "add " + ms(sound) + " to the sound" : "nothing to add";
  }

  /** The best block size, and what remains at it; nothing where that is no nearer. */
  public Optional<String> closest() {
    if (closestBlock.isEmpty()) {
      return Optional.empty();
    }
    BlockRecord block = closestBlock.get();
    return block.soundEarlyMs().abs().compareTo(soundEarlyMs.abs()) < 0
        ? Optional.of(
            "closest without a delay: block "
                + (block.blockSize() + ", " + apart(block.soundEarlyMs())))
        : Optional.empty();
  }

  /** Who comes first, by how much. */
  String apart() {
    return apart(soundEarlyMs);
  }

  private static String apart(BigDecimal early) {
    if (early.signum() == 0) {
      return "sound and picture meet";
    }
    return (early.signum() > 0 ? "sound early by " : "sound late by ") + ms(early.abs());
  }

  private static String verdict(Standing standing) {
    return switch (standing) {
      case WITHIN -> "within";
      case CAUTION -> "noticeable but acceptable by";
      case OVER -> "OUTSIDE";
    };
  }

  private static String ms(BigDecimal ms) {
    return Numbers.inMs(ms, 1);
  }
}
