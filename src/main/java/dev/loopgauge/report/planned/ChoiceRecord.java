package dev.loopgauge.report.planned;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.plan.Choice;
import dev.loopgauge.plan.Load;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * A setting that can be chosen, as documents hold it.
 *
 * @param pictureApartMs how far the picture that is furthest off is
 * @param beforeHost the paths that are fed from before the host then
 * @param doublePatches the inputs that need a second patch for that
 */
public record ChoiceRecord(
    int blockSize,
    int sampleRateHz,
    Optional<BigDecimal> blockMs,
    Optional<BigDecimal> pictureApartMs,
    Optional<BigDecimal> cpuPercent,
    Optional<Integer> dropouts,
    List<String> beforeHost,
    List<PatchRecord> doublePatches,
    List<SettingPathRecord> paths)
    implements Sparse {
  private static final int PERCENT_DECIMALS = 2;

  /** An input that needs a second patch, before the host, and the paths that are fed from it. */
  public record PatchRecord(String input, List<String> paths) {}

  /**
   * Of a choice.
   *
   * @param chain the rig
   * @param load what is known of the computer at it
   * @param paths its paths
   */
  static ChoiceRecord of(
      Choice choice, Chain chain, Optional<Load> load, List<SettingPathRecord> paths) {
    OptionalInt dropouts = load.map(Load::dropouts).orElse(OptionalInt.empty());
    return new ChoiceRecord(
        choice.setting().blockSize(),
        choice.setting().rate().hertz(),
        Optional.of(Written.ms(choice.setting().blockMs())),
        Optional.of(Written.ms(choice.pictureApartMs())),
        load.map(Load::cpuPercent)
            .flatMap(Written::boxed)
            .map(cpu -> Numbers.rounded(cpu, PERCENT_DECIMALS)),
        dropouts.isPresent() ? Optional.of(dropouts.getAsInt()) : Optional.empty(),
        choice.beforeHost(),
        choice.doublePatches(chain).stream()
            .map(patch -> new PatchRecord(patch.input(), patch.paths()))
            .toList(),
        paths);
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("cpuPercent", "dropouts", "doublePatches");
  }

  /** In words. */
  String told() {
    return new SettingRecord(blockSize, sampleRateHz).told();
  }

  /** The path with the smallest margin. */
  Optional<SettingPathRecord> tightest() {
    return paths.stream()
        .filter(path -> path.marginMs().isPresent())
        .min(Comparator.comparing(path -> path.marginMs().orElseThrow()));
  }

  /** Whether one of its paths has a picture. */
  boolean hasPicture() {
    return paths.stream().anyMatch(path -> path.picture().isPresent());
  }
}
