package dev.loopgauge.measure;

import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.Signal;

/**
 * What one measurement plays, how often, and how long a delay it waits for.
 *
 * @param stimulus what is played
 * @param repeats how many times, 1 to {@value #MOST_REPEATS}
 * @param maxDelaySeconds the longest delay looked for, above 0, at most {@value #LONGEST_SECONDS} s
 */
public record MeasurementPlan(PlayedStimulus stimulus, int repeats, double maxDelaySeconds) {
  /** The most repeats. */
  public static final int MOST_REPEATS = 100;

  /** The longest delay that can be looked for, in seconds. */
  public static final double LONGEST_SECONDS = 10;

  /** The longest that a measurement may take, in seconds. */
  private static final double LONGEST_TAKE_SECONDS = 300;

  /** Lets the stream settle before anything is played. */
  private static final double LEAD_IN_SECONDS = 0.25;

  /** Lets the rig ring out, and the feedback guard see what grows. */
  private static final double TAIL_SECONDS = 0.35;

  private static final double CONVERTER_SECONDS = 0.1;

  /** The lead-in where a reference is recorded beside: nothing hangs on when it begins. */
  private static final double SHORT_LEAD_IN_SECONDS = 0.01;

  /**
   * After each turn the guard needs six windows of 50 ms in a row that begin after it, so seven's
   * time: {@link dev.loopgauge.capture.FeedbackGuard}.
   */
  private static final double GUARD_SECONDS = 0.35;

  /** Lets the rig ring out where the reference shows what belongs to a turn. */
  private static final double RING_SECONDS = 0.015;

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException when a value is out of range, or all together take too long
   */
  public MeasurementPlan {
    if (repeats < 1 || repeats > MOST_REPEATS) {
      throw new IllegalArgumentException(
          "a measurement repeats 1 to " + MOST_REPEATS + " times, not " + repeats);
    }
    if (!(maxDelaySeconds > 0 && maxDelaySeconds <= LONGEST_SECONDS)) {
      throw new IllegalArgumentException(
          "the longest delay must be above 0 and at most "
              + LONGEST_SECONDS
              + " s, not "
              + maxDelaySeconds
              + " s");
    }
    double takes = repeats * (stimulus.seconds() + maxDelaySeconds);
    if (takes > LONGEST_TAKE_SECONDS) {
      throw new IllegalArgumentException(
          "a measurement may take " + LONGEST_TAKE_SECONDS + " s, not " + takes + " s");
    }
  }

  /** The longest delay looked for against what was played: the card's own comes on top. */
  double maxDelayWithCardSeconds(SessionInfo info) {
    double card = (double) info.latestSamples() / info.rate().hertz();
    return maxDelaySeconds + card + CONVERTER_SECONDS;
  }

  /**
   * How long one take of this plan is, in seconds.
   *
   * @param referenced whether a reference is recorded beside
   */
  public double takeSeconds(SessionInfo info, boolean referenced) {
    Schedule schedule = referenced ? referenced(info, repeats) : schedule(info, repeats);
    return (double) schedule.frames() / info.rate().hertz();
  }

  /** This plan in frames, with as many turns as given, each heard as late as the card may be. */
  Schedule schedule(SessionInfo info, int turns) {
    Signal played = stimulus.render(info.rate());
    int leadIn = info.rate().samplesIn(LEAD_IN_SECONDS);
    int listen = info.rate().samplesIn(maxDelayWithCardSeconds(info) + TAIL_SECONDS);
    return new Schedule(played, leadIn, listen, 0, turns);
  }

  /**
   * The same where a reference is recorded beside. Both returns are late by the card, so each turn
   * is looked for from where the reference has it on, and what the card may be late by is waited
   * for once, after the last one.
   */
  Schedule referenced(SessionInfo info, int turns) {
    Signal played = stimulus.render(info.rate());
    int leadIn = info.rate().samplesIn(SHORT_LEAD_IN_SECONDS);
    int guard = info.rate().samplesIn(GUARD_SECONDS);
    int ringing = info.rate().samplesIn(maxDelaySeconds + RING_SECONDS);
    int listen = Math.max(guard, ringing);
    int card = info.latestSamples() + info.rate().samplesIn(CONVERTER_SECONDS);
    return new Schedule(played, leadIn, listen, Math.max(0, ringing + card - listen), turns);
  }
}
