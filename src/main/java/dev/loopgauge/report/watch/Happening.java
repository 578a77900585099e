package dev.loopgauge.report.watch;

import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.measured.LimitRecord;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What an event is about. Keys that don't belong to its kind are left out.
 *
 * @param step a step of the delay
 * @param clockDriftPpm how fast the delay grows
 * @param clockDriftUncertaintyPpm its expanded uncertainty
 * @param clockDriftMsPerHour the same drift in ms an hour
 * @param towardsLimit when the listener's limit is passed by it
 * @param lostMs for how long sound was lost, where that is known
 * @param changeDb by how much the level changed
 * @param changeUncertaintyDb its expanded uncertainty
 * @param otherSamples the delay that it jumps to and fro to
 * @param causes what the chain file allows as the cause, the likely one first
 * @param text the event in words
 */
public record Happening(
    Optional<StepPart> step,
    Optional<BigDecimal> clockDriftPpm,
    Optional<BigDecimal> clockDriftUncertaintyPpm,
    Optional<BigDecimal> clockDriftMsPerHour,
    Optional<LimitRecord> towardsLimit,
    Optional<BigDecimal> lostMs,
    Optional<BigDecimal> changeDb,
    Optional<BigDecimal> changeUncertaintyDb,
    Optional<BigDecimal> otherSamples,
    List<Cause> causes,
    Optional<String> text)
    implements Sparse {
  /** Nothing of all that. */
  public static final Happening NONE = new Builder().build();

  /**
   * A step.
   *
   * @param withinSeconds how far off its time may be either way
   * @param blocks the change in whole blocks of a host, for each host that fits
   */
  public record StepPart(
      BigDecimal fromSamples,
      BigDecimal toSamples,
      BigDecimal changeSamples,
      BigDecimal changeMs,
      BigDecimal uncertaintySamples,
      BigDecimal withinSeconds,
      List<BlocksPart> blocks) {}

  /**
   * A number of blocks.
   *
   * @param host the host, where it has a name
   */
  public record BlocksPart(Optional<String> host, int blockSize, int blocks) {}

  /** A cause. */
  public record Cause(String cause, String text) {}

  /** Puts together what belongs to a kind of event. */
  public static final class Builder {
    private Optional<StepPart> step = Optional.empty();
    private Optional<BigDecimal> ppm = Optional.empty();
    private Optional<BigDecimal> uncertaintyPpm = Optional.empty();
    private Optional<BigDecimal> msPerHour = Optional.empty();
    private Optional<LimitRecord> limit = Optional.empty();
    private Optional<BigDecimal> lost = Optional.empty();
    private Optional<BigDecimal> change = Optional.empty();
    private Optional<BigDecimal> changeUncertainty = Optional.empty();
    private Optional<BigDecimal> other = Optional.empty();
    private List<Cause> causes = List.of();

    /** A step and what may have caused it. */
    public Builder step(StepPart part, List<Cause> likely) {
      step = Optional.of(part);
      causes = List.copyOf(likely);
      return this;
    }

    /** A drift and where it leads. */
    public Builder drift(
        BigDecimal perMillion,
        BigDecimal uncertainty,
        BigDecimal perHour,
        Optional<LimitRecord> towards) {
      ppm = Optional.of(perMillion);
      uncertaintyPpm = Optional.of(uncertainty);
      msPerHour = Optional.of(perHour);
      limit = towards;
      return this;
    }

    /** Lost sound. */
    public Builder lostMs(Optional<BigDecimal> ms) {
      lost = ms;
      return this;
    }

    /** A change of level. */
    public Builder change(BigDecimal db, BigDecimal uncertaintyDb) {
      change = Optional.of(db);
      changeUncertainty = Optional.of(uncertaintyDb);
      return this;
    }

    /** Another delay. */
    public Builder other(BigDecimal samples) {
      other = Optional.of(samples);
      return this;
    }

    /** All of it. */
    public Happening build() {
      return new Happening(
          step,
          ppm,
          uncertaintyPpm,
          msPerHour,
          limit,
          lost,
          change,
          changeUncertainty,
          other,
          causes,
          Optional.empty());
    }
  }

  /** The same in words. */
  public Happening saying(String words) {
    return new Happening(
        step,
        clockDriftPpm,
        clockDriftUncertaintyPpm,
        clockDriftMsPerHour,
        towardsLimit,
        lostMs,
        changeDb,
        changeUncertaintyDb,
        otherSamples,
        causes,
        Optional.of(words));
  }

  @Override
  public Set<String> leftOut() {
    return Set.of(
        "step",
        "clockDriftPpm",
        "clockDriftUncertaintyPpm",
        "clockDriftMsPerHour",
        "towardsLimit",
        "lostMs",
        "changeDb",
        "changeUncertaintyDb",
        "otherSamples",
        "causes",
        "text");
  }
}
