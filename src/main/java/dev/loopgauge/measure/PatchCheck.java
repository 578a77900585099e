package dev.loopgauge.measure;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.Incident;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.signal.StimulusKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

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
    List<String> incidents = capture.incidents().stream().map(Incident::text).distinct().toList();
    return new PatchMap(sends, returns, heard, incidents);
  }

  /** What a return recorded while one send ticked. */
  private record Recorded(int ret, Reading reading, double rms) {
    static Recorded of(int ret, Reading reading) {
      return new Recorded(ret, reading, PatchCheck.rms(reading.ret()));
    }
  }

  /** The loudest return first: what is then too quiet to be more than bleed is not read at all. */
  private List<PatchMap.Heard> hearing(
      int turn, Schedule schedule, Capture capture, DelayEstimator estimator) {
    List<PatchMap.Heard> heard = new ArrayList<>();
    double least = 0;
    for (Recorded one : loudestFirst(turn, schedule, capture)) {
      if (one.rms() >= least
          && estimator.estimate(List.of(one.reading())) instanceof Estimate.Found found) {
        heard.add(PatchMap.Heard.of(sends.get(turn), one.ret(), found.measurement()));
        double bleed = Decibels.toFactor(found.measurement().levelDb() - BLEED_DB);
        least = Math.max(least, rms(one.reading().reference()) * bleed);
      }
    }
    heard.sort(Comparator.comparingInt(one -> returns.indexOf(one.ret())));
    return heard;
  }

  private List<Recorded> loudestFirst(int turn, Schedule schedule, Capture capture) {
    Turn heard = new Turn(schedule, turn, 0, capture.returns());
    return IntStream.range(0, returns.size())
        .mapToObj(i -> Recorded.of(returns.get(i), heard.againstPlayed(i)))
        .sorted(Comparator.comparingDouble(Recorded::rms).reversed())
        .toList();
  }

  private static double rms(Samples samples) {
    return samples.slice(0, samples.length()).rms();
  }

  private static List<PatchMap.Heard> withoutBleed(List<PatchMap.Heard> heard) {
    double loudest =
        heard.stream().mapToDouble(PatchMap.Heard::levelDb).max().orElse(Double.NEGATIVE_INFINITY);
    return heard.stream().filter(one -> one.levelDb() >= loudest - BLEED_DB).toList();
  }
}
