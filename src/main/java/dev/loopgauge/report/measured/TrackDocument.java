package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.result.Step;
import dev.loopgauge.estimate.result.Track;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.report.form.FindingRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.TowardsLimit;
import dev.loopgauge.verify.verdict.OverallVerdict;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The delay through a long recording.
 *
 * @param command the command that followed it
 * @param verdict how everything that was heard stands; documents of older versions have none
 * @param sampleRateHz the recording's rate; left out where there is no delay
 * @param clockDriftPpm the drift between steps, where it could be told
 * @param clockDriftUncertaintyPpm its expanded uncertainty
 * @param track the delay window by window
 * @param comparison how the window that stands worst compares with the budget, where there is one
 * @param towardsLimit when the listener's limit is passed, where the delay drifts towards it
 * @param notes what the reader must take for granted, one sentence each
 * @param kept whether it was kept in the journal, where that was asked
 */
public record TrackDocument(
    String command,
    Outcome outcome,
    Optional<VerdictRecord> verdict,
    Optional<Integer> sampleRateHz,
    Optional<BigDecimal> windowSeconds,
    Optional<Integer> windowsLeftOut,
    Optional<BigDecimal> clockDriftPpm,
    Optional<BigDecimal> clockDriftUncertaintyPpm,
    List<PointRecord> track,
    List<StepRecord> steps,
    List<FindingRecord> findings,
    Optional<ComparisonRecord> comparison,
    Optional<LimitRecord> towardsLimit,
    List<String> notes,
    Optional<KeptRecord> kept)
    implements Keepable, Sparse {
  private static final int DECIMALS = 4;

  /** How far a step may lie off whole blocks to be told in blocks, in samples. */
  private static final double OFF_BLOCK = 0.5;

  /** The delay in one window. */
  public record PointRecord(
      BigDecimal atSeconds, BigDecimal delaySamples, Optional<BigDecimal> uncertaintySamples) {
    private static PointRecord of(TrackPoint point) {
      return new PointRecord(
          Numbers.rounded(point.atSeconds(), DECIMALS),
          Written.samples(point.delay().samples(), point.uncertaintySamples()),
          Optional.of(Written.uncertainSamples(point.uncertaintySamples())));
    }

    /** The delay as it is shown. */
    public ShownDelay shown(int sampleRateHz) {
      return new ShownDelay(
          delaySamples.doubleValue(),
          uncertaintySamples.map(BigDecimal::doubleValue).orElse(0.0),
          sampleRateHz);
    }
  }

  /**
   * A jump of the delay.
   *
   * @param blocks the change in whole blocks; null when it is none or the block is unknown
   */
  public record StepRecord(
      BigDecimal atSeconds,
      BigDecimal fromSamples,
      BigDecimal toSamples,
      Optional<Integer> blocks) {}

  /**
   * The document of a track.
   *
   * @param verdict over all that was heard
   * @param comparison the window that stands worst against the budget, where there is one
   * @param blockSamples the chain's block in samples of the recording, to count steps in; empty
   *     when unknown
   */
  public static TrackDocument of(
      String command,
      Track track,
      OverallVerdict verdict,
      Optional<Comparison> comparison,
      OptionalDouble blockSamples,
      Optional<TowardsLimit> towardsLimit,
      List<String> notes) {
    return new TrackDocument(
        command,
        track.points().isEmpty()
            ? Outcome.NOT_TRUSTWORTHY
            : comparison.map(Outcome::of).orElse(Outcome.MEASURED),
        Optional.of(VerdictRecord.of(verdict)),
        track.points().stream().findFirst().map(point -> point.delay().rate().hertz()),
        Optional.of(Numbers.rounded(track.windowSeconds(), DECIMALS)),
        Optional.of(track.leftOut()),
        Written.boxed(track.driftPpm()).map(ppm -> Numbers.rounded(ppm, DECIMALS)),
        track.drift().map(d -> Numbers.roundedUp(d.uncertaintyPpm(), DECIMALS)),
        track.points().stream().map(PointRecord::of).toList(),
        track.steps().stream().map(step -> step(step, blockSamples)).toList(),
        track.findings().stream().map(FindingRecord::of).toList(),
        comparison.map(ComparisonRecord::of),
        towardsLimit.map(LimitRecord::of),
        List.copyOf(notes),
        Optional.empty());
  }

  @Override
  public TrackDocument withKept(KeptRecord now) {
    return new TrackDocument(
        command,
        outcome,
        verdict,
        sampleRateHz,
        windowSeconds,
        windowsLeftOut,
        clockDriftPpm,
        clockDriftUncertaintyPpm,
        track,
        steps,
        findings,
        comparison,
        towardsLimit,
        notes,
        Optional.of(now));
  }

  private static StepRecord step(Step step, OptionalDouble blockSamples) {
    return new StepRecord(
        Numbers.rounded(step.atSeconds(), DECIMALS),
        Written.samples(step.fromSamples()),
        Written.samples(step.toSamples()),
        Written.boxed(blockSamples).flatMap(block -> wholeBlocks(step, block)));
  }

  private static Optional<Integer> wholeBlocks(Step step, double block) {
    double blocks = step.changeSamples() / block;
    double off = Math.abs(blocks - Math.rint(blocks)) * block;
    return Optional.of((int) Math.rint(blocks)).filter(whole -> whole != 0 && off <= OFF_BLOCK);
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("verdict", "sampleRateHz", "comparison", "towardsLimit", "notes", "kept");
  }

  @Override
  public String text() {
    return TrackText.of(this);
  }
}
