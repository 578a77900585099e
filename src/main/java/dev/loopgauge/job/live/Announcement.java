package dev.loopgauge.job.live;

import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.measure.Playing;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.signal.PlayedStimulus;
import java.util.List;
import java.util.stream.Collectors;

/** What is about to be played, in words. */
final class Announcement {
  private Announcement() {}

  /**
   * One stimulus on all sends at once.
   *
   * @param spare how many times more it may be played
   */
  static String of(SessionInfo session, List<Integer> sends, MeasurementPlan plan, int spare) {
    PlayedStimulus stimulus = plan.stimulus();
    return where(sends, session)
        + (sends.size() == 1 ? " plays" : " play")
        + " a "
        + stimulus.kind().label()
        + " at "
        + level(stimulus)
        + " for "
        + Numbers.brief(stimulus.seconds(), 2)
        + " s, "
        + times(plan.repeats())
        + (spare == 0 ? "" : ", up to " + (plan.repeats() + spare) + " if sound is lost")
        + "."
        + alone(session);
  }

  /** One stimulus at each stop of a round. */
  static String ofRound(
      SessionInfo session, List<Integer> sends, MeasurementPlan plan, int stops, double seconds) {
    return "%s, in %s: %s at %s for %s s, %s each (up to %d if sound is lost), about %s s in all.%s"
        .formatted(
            where(sends, session),
            stops == 1 ? "one turn" : stops + " turns",
            "a " + plan.stimulus().kind().label(),
            level(plan.stimulus()),
            Numbers.brief(plan.stimulus().seconds(), 2),
            times(plan.repeats()),
            plan.repeats() + Playing.MOST_SPARE,
            Numbers.brief(seconds, 0),
            alone(session));
  }

  /** A tick on each send in turn. */
  static String ofTicks(SessionInfo session, List<Integer> sends, PlayedStimulus tick) {
    return where(sends, session)
        + (sends.size() == 1 ? " plays" : " play in turn")
        + " a short tick at "
        + level(tick)
        + "."
        + alone(session);
  }

  /**
   * A tick on each of the first sends in turn, before they have been counted.
   *
   * @param most how many at the most
   */
  static String ofFirstTicks(SessionInfo session, int most, PlayedStimulus tick) {
    return "The first sends of \""
        + session.output()
        + "\", "
        + most
        + " at most, play in turn a short tick at "
        + level(tick)
        + "."
        + alone(session);
  }

  /**
   * What a session does to other programs, a sentence after a blank; nothing where it leaves them.
   */
  static String alone(SessionInfo session) {
    return session.alone()
        ? " Its driver takes the device for itself: other programs may fall silent."
        : "";
  }

  private static String where(List<Integer> sends, SessionInfo session) {
    String channels =
        sends.stream().sorted().map(String::valueOf).collect(Collectors.joining(", "));
    return (sends.size() == 1 ? "Send " : "Sends ") + channels + " of \"" + session.output() + "\"";
  }

  private static String level(PlayedStimulus stimulus) {
    return Numbers.brief(stimulus.levelDbfs(), 1) + " dBFS";
  }

  private static String times(int repeats) {
    return repeats == 1 ? "once" : repeats + " times";
  }
}
