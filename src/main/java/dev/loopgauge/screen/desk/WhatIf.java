package dev.loopgauge.screen.desk;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.planned.BudgetJob;
import dev.loopgauge.job.planned.PlanJob;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.planned.ChoiceRecord;
import dev.loopgauge.report.planned.PlanDocument;
import dev.loopgauge.report.planned.SettingPathRecord;
import dev.loopgauge.screen.state.Forecast;
import dev.loopgauge.screen.state.Situation.Rig;
import dev.loopgauge.signal.SampleRate;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What would be predicted if the rig were set otherwise.
 *
 * @param blockSize another block size
 * @param rateHz another sample rate
 * @param without a stage that is taken out
 */
public record WhatIf(
    Optional<Integer> blockSize, Optional<Integer> rateHz, Optional<String> without) {
  private static final int MOST_CHOICES = 3;

  /**
   * What comes of it.
   *
   * @param told what is different, in words
   * @param choices the settings that keep every listener within limits, the best first
   */
  public record Outcome(String told, List<Forecast> paths, List<String> choices) {}

  /**
   * Predicts.
   *
   * @throws UsageException when there is no such stage, size or rate
   */
  Outcome of(Path file, Rig rig) throws ChainFormatException {
    BudgetJob job =
        new BudgetJob(
            file,
            List.of(),
            blockSize,
            rateHz.map(SampleRate::new),
            without.map(stage -> List.of("absent=" + stage)).orElse(List.of()),
            PictureRule.EBU_R37,
            false);
    BudgetDocument budget = (BudgetDocument) job.run().document();
    return new Outcome(
        told(),
        budget.paths().stream().map(path -> Forecast.of(rig.chain(), path)).toList(),
        choices(file, rig));
  }

  private String told() {
    return "If"
        + blockSize.map(size -> " the block were " + size).orElse("")
        + rateHz.map(hz -> " the rate were " + Numbers.brief(hz / 1000.0, 3) + " kHz").orElse("")
        + without.map(stage -> " '" + stage + "' were out").orElse("")
        + ": predicted, not measured";
  }

  private static List<String> choices(Path file, Rig rig) throws ChainFormatException {
    if (!rig.chain().countsBlocks()) {
      return List.of();
    }
    PlanJob job =
        new PlanJob(
            file,
            BlockSizes.USUAL,
            List.of(),
            List.of(),
            List.of(),
            PictureRule.EBU_R37,
            List.of());
    return ((PlanDocument) job.run().document())
        .choices().stream().limit(MOST_CHOICES).map(WhatIf::told).toList();
  }

  private static String told(ChoiceRecord choice) {
    String tightest =
        choice.paths().stream()
            .filter(path -> path.marginMs().isPresent())
            .min(Comparator.comparing(path -> path.marginMs().orElseThrow()))
            .map(WhatIf::spare)
            .orElse("");
    return "Block "
        + choice.blockSize()
        + " at "
        + Numbers.brief(choice.sampleRateHz() / 1000.0, 3)
        + " kHz"
        + tightest;
  }

  private static String spare(SettingPathRecord path) {
    return ": " + Numbers.inMs(path.marginMs().orElseThrow(), 1) + " to spare on " + path.path();
  }
}
