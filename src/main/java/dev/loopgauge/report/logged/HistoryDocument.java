package dev.loopgauge.report.logged;

import dev.loopgauge.journal.Cause;
import dev.loopgauge.journal.ComparedAspect;
import dev.loopgauge.journal.DelayTrend;
import dev.loopgauge.journal.History;
import dev.loopgauge.journal.HistoryPoint;
import dev.loopgauge.journal.HistoryPoint.Mark;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Inlined;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * One path over all shows.
 *
 * @param path the path
 * @param sampleRateHz the rate of the last trusted entry, at which all samples count
 * @param levelSamples the level since the last step
 * @param drift how it moved since the last step; null with too few readings
 * @param steps where the delay went to another level and stayed
 * @param points every entry, in the order of time
 * @param notes what is to be known of the places of entries
 */
public record HistoryDocument(
    String command,
    String outcome,
    String path,
    int sampleRateHz,
    BigDecimal levelSamples,
    Optional<DriftRecord> drift,
    List<StepRecord> steps,
    List<PointRecord> points,
    List<String> notes)
    implements Document {
  private static final int DAY_DECIMALS = 3;
  private static final int SLOPE_DECIMALS = 6;

  /** A slow move of the delay, with the ends of its 95 % interval. */
  public record DriftRecord(
      boolean drifts,
      int readings,
      BigDecimal days,
      BigDecimal samplesPerDay,
      BigDecimal lowSamplesPerDay,
      BigDecimal highSamplesPerDay) {
    private static DriftRecord of(DelayTrend drift) {
      return new DriftRecord(
          drift.isThere(),
          drift.readings(),
          Numbers.rounded(drift.days(), DAY_DECIMALS),
          Numbers.rounded(drift.samplesPerDay(), SLOPE_DECIMALS),
          Numbers.rounded(drift.low(), SLOPE_DECIMALS),
          Numbers.rounded(drift.high(), SLOPE_DECIMALS));
    }
  }

  /**
   * A lasting change.
   *
   * @param before the id of the last entry before it
   * @param after the id of the first entry after it
   * @param causes what may have made it, one sentence each
   * @param standings how sure each cause is
   */
  public record StepRecord(
      String before,
      String after,
      BigDecimal samples,
      List<String> causes,
      List<Cause.Standing> standings) {
    private static StepRecord of(History.Step step, List<Cause> causes) {
      return new StepRecord(
          step.before().id().toString(),
          step.after().id().toString(),
          Written.samples(step.samples()),
          causes.stream().map(Cause::text).toList(),
          causes.stream().map(Cause::standing).toList());
    }
  }

  /**
   * An entry and what is special about it.
   *
   * @param mark what is special about its delay
   * @param changedAspects what else is not as it was at the entry before; null where that was not
   *     compared
   */
  public record PointRecord(
      @Inlined ListedRecord listed, Mark mark, Optional<List<ComparedAspect>> changedAspects) {
    private static PointRecord of(HistoryPoint point, Optional<List<ComparedAspect>> changed) {
      return new PointRecord(ListedRecord.of(point.heading()), point.mark(), changed);
    }
  }

  /**
   * The history of a path.
   *
   * @param causes what may have made each of its last steps, as many as there are lists
   * @param changed what else than the delay changed, of the entries that were compared with the one
   *     before
   * @param notes what is to be known of the places of entries, one sentence each
   */
  public static HistoryDocument of(
      String path,
      History history,
      List<List<Cause>> causes,
      Map<UUID, List<ComparedAspect>> changed,
      List<String> notes) {
    return new HistoryDocument(
        "journal history",
        "followed",
        path,
        history.rate().hertz(),
        Written.samples(history.levelSamples()),
        history.drift().map(DriftRecord::of),
        steps(history.steps(), causes),
        history.points().stream()
            .map(point -> PointRecord.of(point, Optional.ofNullable(changed.get(id(point)))))
            .toList(),
        notes);
  }

  private static UUID id(HistoryPoint point) {
    return point.heading().id();
  }

  private static List<StepRecord> steps(List<History.Step> steps, List<List<Cause>> causes) {
    List<StepRecord> records = new ArrayList<>();
    int unexplained = steps.size() - causes.size();
    for (int i = 0; i < steps.size(); i++) {
      List<Cause> known = i < unexplained ? List.of() : causes.get(i - unexplained);
      records.add(StepRecord.of(steps.get(i), known));
    }
    return List.copyOf(records);
  }

  @Override
  public String text() {
    return new HistoryText(this).toString();
  }
}
