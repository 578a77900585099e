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
      for (StageRecord stage : added) {
        parts.add(part(stage, "+"));
      }
      for (StageRecord stage : spared) {
        parts.add(part(stage, "-"));
      }
      return parts.isEmpty() ? "the same stages" : String.join(", ", parts);
    }
  }

  /** Of inputs. */
  static List<InputRecord> of(List<SharedInput> inputs) {
    List<InputRecord> records = new ArrayList<>();
    for (SharedInput input : inputs) {
      records.add(of(input));
    }
    return records;
  }

  private static InputRecord of(SharedInput input) {
    List<LaterRecord> later = new ArrayList<>();
    for (SharedInput.Destination other : input.others()) {
      later.add(LaterRecord.of(other));
    }
    return new InputRecord(input.input(), input.fastest().name(), later);
  }

  private static String part(StageRecord stage, String sign) {
    String ms =
        stage.delayMs().isPresent()
            ? Numbers.plain(stage.delayMs().get().doubleValue(), MS_DECIMALS)
            : "?";
    return stage.name() + " " + sign + ms;
  }
}
