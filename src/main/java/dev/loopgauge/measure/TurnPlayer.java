package dev.loopgauge.measure;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.Take;
import dev.loopgauge.capture.TakeWatch;
import dev.loopgauge.signal.Decibels;

/**
 * Plays the turns of a plan, and those again in which sound was lost, as often as agreed.
 *
 * @param sends on how many sends at once
 * @param referenced whether a reference is recorded beside, so that the offset between playing and
 *     recording may be another one after a loss
 */
record TurnPlayer(
    AudioSession session, int sends, MeasurementPlan plan, Playing playing, boolean referenced) {
  /**
   * Plays until there are as many clean turns as planned, or no more may be played.
   *
   * @throws CaptureException when the sound failed for good
   */
  Turns play() throws CaptureException {
    Turns turns = take(Turns.none(), plan.repeats());
    int spare = playing.spareTurns();
    while (turns.clean().size() < plan.repeats() && spare > 0 && !turns.areInDoubt()) {
      int next = Math.min(spare, plan.repeats() - turns.clean().size());
      playing.listener().again(next, turns.lost());
      session.renew();
      turns = take(turns, next);
      spare -= next;
    }
    return turns;
  }

  private Turns take(Turns before, int count) throws CaptureException {
    Schedule schedule =
        referenced ? plan.referenced(session.info(), count) : plan.schedule(session.info(), count);
    Take take = schedule.together(sends).watchedBy(watch(schedule));
    try {
      return before.with(schedule, session.capture(take));
    } catch (CaptureException e) {
      Capture partly = e.before().orElse(null);
      if (partly == null || !referenced || playing.spareTurns() == 0) {
        throw e;
      }
      return before.with(schedule, partly);
    }
  }

  /** Tells of each turn as it is over. */
  private TakeWatch watch(Schedule schedule) {
    return new TakeWatch() {
      private int told;

      @Override
      public void recorded(float[][] returns, int frames) {
        while (told < schedule.turns() && frames >= schedule.start(told + 1)) {
          double peak = peak(returns[0], schedule.start(told), schedule.start(told + 1));
          told++;
          playing.listener().heard(told, schedule.turns(), Decibels.ofFactor(peak));
        }
      }
    };
  }

  private static double peak(float[] samples, int from, int to) {
    double peak = 0;
    for (int i = from; i < to; i++) {
      peak = Math.max(peak, Math.abs(samples[i]));
    }
    return peak;
  }
}
