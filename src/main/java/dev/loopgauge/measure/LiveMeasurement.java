package dev.loopgauge.measure;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/**
 * Measures through an open session. Each method plays the plan once; they differ in how the sound
 * card's own delay is kept out of the result.
 *
 * <p>A turn in which sound was lost is played again where that was agreed to; where too few are
 * clean the measurement is refused, whatever could still be read from it.
 *
 * @param session channels opened in the order of {@link Patching#sends} and {@link
 *     Patching#returns}
 * @param patching what is patched where
 * @param plan what is played
 * @param arrival which arrival is measured where there are several
 * @param playing what is played where sound is lost, and who is told
 */
public record LiveMeasurement(
    AudioSession session,
    Patching patching,
    MeasurementPlan plan,
    ArrivalChoice arrival,
    Playing playing) {
  private static final int RIG = 0;
  private static final int REFERENCE = 1;

  /** A measurement that leaves the choice between like arrivals open. */
  public LiveMeasurement(AudioSession session, Patching patching, MeasurementPlan plan) {
    this(session, patching, plan, ArrivalChoice.UNDECIDED, Playing.ONCE);
  }

  /**
   * Against the reference return, recorded at the same time, so that the card cancels.
   *
   * @throws CaptureException when the sound failed
   * @throws IllegalStateException when nothing is patched as a reference
   */
  public Estimate referenced() throws CaptureException {
    ChannelPair pair =
        patching
            .reference()
            .orElseThrow(() -> new IllegalStateException("no reference in " + patching));
    Turns turns = turns(true);
    Estimate estimate = read(turns, clean -> againstReference(clean, pair));
    boolean doubtful =
        estimate instanceof Estimate.Found && turns.areAlike(RIG, REFERENCE) && !hearTheirOwn(pair);
    return doubtful
        ? new Estimate.Refused(List.of(LiveFindings.sameSignal(patching.rig(), pair)))
        : estimate;
  }

  /**
   * Against the reference return, less the skew of the two pairs of channels.
   *
   * @param skew of what is patched, which must hold for this session
   * @throws CaptureException when the sound failed
   */
  public Estimate lessSkew(Calibration skew) throws CaptureException {
    return map(
        referenced(),
        found ->
            found.lessCalibration(
                skew.delaySamples(), skew.uncertaintySamples(), Method.REFERENCED));
  }

  /**
   * Against what was played, less what a patch cable took.
   *
   * @param cable the card's own delay, which must hold for this session
   * @param method {@link Method#CALIBRATED} or {@link Method#SAMPLE_LOCKED}
   * @throws CaptureException when the sound failed
   */
  public Estimate lessCable(Calibration cable, Method method) throws CaptureException {
    return map(
        withCard(),
        found -> found.lessCalibration(cable.delaySamples(), cable.uncertaintySamples(), method));
  }

  /**
   * Against what was played, with the card's own delay in the number and a finding that says so.
   *
   * @param why why it is
   * @param hint what would keep it out
   * @throws CaptureException when the sound failed
   */
  public Estimate uncalibrated(String why, String hint) throws CaptureException {
    Estimate estimate = withCard();
    return estimate instanceof Estimate.Found
        ? with(estimate, LiveFindings.uncalibrated(why, hint))
        : estimate;
  }

  /**
   * Against what was played, with the card's own delay in the number: what a calibration measures.
   *
   * @throws CaptureException when the sound failed
   */
  public Estimate withCard() throws CaptureException {
    return map(
        read(turns(false), this::againstPlayed), found -> found.withMethod(Method.UNCALIBRATED));
  }

  /**
   * Whether the path's return hears the path's send alone, and the reference's return the
   * reference's: a quiet tick on one after the other shows it. Where one send feeds both nothing
   * can show it.
   */
  private boolean hearTheirOwn(ChannelPair reference) throws CaptureException {
    ChannelPair rig = patching.rig();
    if (rig.send() == reference.send()) {
      return false;
    }
    PatchMap map =
        PatchCheck.quiet(
                patching.sends(),
                patching.returns(),
                plan.stimulus().levelDbfs(),
                plan.maxDelaySeconds())
            .run(session);
    return map.joinsOnly(rig) && map.joinsOnly(reference);
  }

  /**
   * @param referenced whether a reference is recorded beside
   */
  private Turns turns(boolean referenced) throws CaptureException {
    return new TurnPlayer(session, patching.sends().size(), plan, playing, referenced).play();
  }

  private Estimate read(Turns turns, Function<List<Turn>, Estimate> reader) {
    if (!turns.areEnough(plan.repeats())) {
      return new Estimate.Refused(LiveFindings.lost(turns.incidents()));
    }
    Estimate read = new RateCheck(session.info(), turns.rate()).of(reader.apply(turns.clean()));
    return turns.lost() == 0 ? read : with(read, LiveFindings.playedAgain(turns));
  }

  private Estimate againstPlayed(List<Turn> turns) {
    return new DelayEstimator(plan.maxDelayWithCardSeconds(session.info()), arrival)
        .estimate(turns.stream().map(turn -> turn.againstPlayed(RIG)).toList());
  }

  /** A reference that isn't the stimulus would make a number that means nothing. */
  private Estimate againstReference(List<Turn> turns, ChannelPair pair) {
    Estimate check = firstTurn(turns);
    if (!(check instanceof Estimate.Found found)) {
      return new Estimate.Refused(List.of(LiveFindings.noReference(pair, reason(check))));
    }
    double first = found.measurement().delay().samples() - turns.get(0).schedule().leeway();
    int late = (int) Math.max(0, Math.floor(first) - 1);
    Estimate estimate =
        new DelayEstimator(plan.maxDelaySeconds(), arrival)
            .estimate(
                turns.stream().map(turn -> turn.againstReference(REFERENCE, RIG, late)).toList());
    for (Finding told : new ReferenceCheck(pair, plan.stimulus().levelDbfs()).of(found)) {
      estimate = with(estimate, told);
    }
    return estimate;
  }

  /** One turn will do, and is fair to a card that plays and records by clocks of its own. */
  private Estimate firstTurn(List<Turn> turns) {
    return new DelayEstimator(plan.maxDelayWithCardSeconds(session.info()))
        .estimate(List.of(turns.get(0).againstPlayed(REFERENCE)));
  }

  private static String reason(Estimate refused) {
    return refused.findings().stream()
        .filter(Finding::refuses)
        .map(Finding::text)
        .findFirst()
        .orElseThrow();
  }

  private static Estimate with(Estimate estimate, Finding finding) {
    List<Finding> findings = new ArrayList<>(estimate.findings());
    findings.add(finding);
    return estimate instanceof Estimate.Found found
        ? new Estimate.Found(found.measurement(), findings)
        : new Estimate.Refused(findings);
  }

  private static Estimate map(Estimate estimate, UnaryOperator<Measurement> change) {
    return estimate instanceof Estimate.Found found
        ? new Estimate.Found(change.apply(found.measurement()), found.findings())
        : estimate;
  }
}
