package dev.loopgauge.measure;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.estimate.Reading;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.StimulusKind;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds out what is patched where: a short quiet tick on each send in turn, while all returns
 * listen.
 *
 * @param sends the session's sends, in its order
 * @param returns the session's returns, in its order
 * @param plan what a tick is and how long it is waited for
 */
public record PatchCheck(List<Integer> sends, List<Integer> returns, MeasurementPlan plan) {
  /** The level of a tick where nothing quieter was asked for, in dBFS. */
  public static final double TICK_DBFS = -30;

  /** How long a tick lasts: a chirp this short sounds like one, and carries in a noisy room. */
  public static final double TICK_SECONDS = 0.05;

  /**
   * How far below the loudest return of a tick another one may lie and still be patched; below it,
   * it is one channel bleeding into the next. (Common practice, no source.)
   */
  private static final double BLEED_DB = 40;

  /**
   * Copies the lists.
   *
   * @throws IllegalArgumentException when there is nothing to play to
   */
  public PatchCheck {
    sends = List.copyOf(sends);
    returns = List.copyOf(returns);
    if (sends.isEmpty()) {
      throw new IllegalArgumentException("a patch check needs at least one send");
    }
  }

  /**
   * A check with ticks no louder than a level.
   *
   * @param levelDbfs the loudest peak allowed, in dBFS
   * @param maxDelaySeconds how long to wait for a tick, in seconds
   */
  public static PatchCheck quiet(
      List<Integer> sends, List<Integer> returns, double levelDbfs, double maxDelaySeconds) {
    PlayedStimulus tick =
        new PlayedStimulus(StimulusKind.SWEEP, TICK_SECONDS, Math.min(levelDbfs, TICK_DBFS));
    return new PatchCheck(sends, returns, new MeasurementPlan(tick, 1, maxDelaySeconds));
  }

  /**
   * Plays and listens.
   *
   * @param session opened with these sends and returns
   * @throws CaptureException when the sound failed
   */
  public PatchMap run(AudioSession session) throws CaptureException {
    Schedule schedule = plan.schedule(session.info(), sends.size());
    Capture capture = session.capture(schedule.inTurn());
    DelayEstimator estimator = new DelayEstimator(plan.maxDelayWithCardSeconds(session.info()));
    List<PatchMap.Heard> heard = new ArrayList<>();
    for (int turn = 0; turn < sends.size(); turn++) {
      heard.addAll(withoutBleed(hearing(turn, schedule, capture, estimator)));
    }
    List<String> incidents = capture.incidents().stream().map(Incident::text).toList();
    return new PatchMap(sends, returns, heard, incidents);
  }

  private List<PatchMap.Heard> hearing(
      int turn, Schedule schedule, Capture capture, DelayEstimator estimator) {
    List<PatchMap.Heard> heard = new ArrayList<>();
    for (int i = 0; i < returns.size(); i++) {
      Reading reading = schedule.againstPlayed(capture.returns().get(i), turn);
      if (estimator.estimate(List.of(reading)) instanceof Estimate.Found found) {
        heard.add(PatchMap.Heard.of(sends.get(turn), returns.get(i), found.measurement()));
      }
    }
    return heard;
  }

  private static List<PatchMap.Heard> withoutBleed(List<PatchMap.Heard> heard) {
    double loudest =
        heard.stream().mapToDouble(PatchMap.Heard::levelDb).max().orElse(Double.NEGATIVE_INFINITY);
    return heard.stream().filter(one -> one.levelDb() >= loudest - BLEED_DB).toList();
  }
}
