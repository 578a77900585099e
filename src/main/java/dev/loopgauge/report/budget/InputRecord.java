package dev.loopgauge.report.budget;

import dev.loopgauge.plan.SharedInput;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where one input goes, side by side, as documents hold it. */
public record InputRecord(String input, String fastest, List<LaterRecord> later) {
  private static final int MS_DECIMALS = 3;

  /** A path that is later than the fastest, and the stages that make it so. */
  public record LaterRecord(
      String path,
      Optional<BigDecimal> laterSamples,
      BigDecimal laterMs,
      List<StageRecord> added,
      List<StageRecord> spared) {
    private static LaterRecord of(SharedInput.Destination destination) {
      return new LaterRecord(
          destination.path().name(),
          Optional.of(Written.samples(destination.later().samples())),
          Written.ms(destination.later().ms()),
          StageRecord.of(destination.stages().added()),
          StageRecord.of(destination.stages().spared()));
    }

    /** Which stages make it so: {@code host +2.667}. */
    String because() {
      List<String> parts = new ArrayList<>();
      added.forEach(stage -> parts.add(part(stage, "+")));
      spared.forEach(stage -> parts.add(part(stage, "-")));
      return parts.isEmpty() ? "the same stages" : String.join(", ", parts);
    }
  }

  /** Of an input. */
  static InputRecord of(SharedInput input) {
    return new InputRecord(
        input.input(),
        input.fastest().name(),
        input.others().stream().map(LaterRecord::of).toList());
  }

  private static String part(StageRecord stage, String sign) {
    String ms =
        stage.delayMs().map(known -> Numbers.plain(known.doubleValue(), MS_DECIMALS)).orElse("?");
    return stage.name() + " " + sign + ms;
  }
}
