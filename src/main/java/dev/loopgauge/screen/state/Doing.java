package dev.loopgauge.screen.state;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What is under way.
 *
 * @param step how far it is
 * @param title what it is, in words; empty where nothing was begun yet
 * @param asked what somebody at the computer must agree to, where they must
 * @param told what was said meanwhile, the last line last
 * @param levels how loud the returns are
 * @param failed why it ended without a result
 */
public record Doing(
    Step step,
    String title,
    List<String> asked,
    List<String> told,
    List<Level> levels,
    Optional<Trouble> failed) {
  /** Nothing was begun yet. */
  public static final Doing NOTHING =
      new Doing(Step.IDLE, "", List.of(), List.of(), List.of(), Optional.empty());

  private static final int MOST_TOLD = 6;

  /** How far something is. */
  public enum Step {
    /** Nothing is under way. */
    IDLE,
    /** Somebody at the computer is asked. */
    ASKING,
    /** It plays, records or reads. */
    WORKING,
    /** It listens until somebody has enough, and plays nothing. */
    WATCHING
  }

  /**
   * How loud a return was.
   *
   * @param figure the peak, with its unit
   * @param percent where that lies between -60 dBFS and full scale, 0 to 100
   * @param clipped whether it reached full scale at any time
   * @param heard whether it was above what converters do by themselves at any time
   */
  public record Level(String name, String figure, int percent, boolean clipped, boolean heard) {}

  /** Something begins. */
  public static Doing begun(String title) {
    return new Doing(Step.WORKING, title, List.of(), List.of(), List.of(), Optional.empty());
  }

  /** Listening begins. */
  public static Doing listening(String title) {
    return new Doing(Step.WATCHING, title, List.of(), List.of(), List.of(), Optional.empty());
  }

  /** Somebody is asked about this. */
  public Doing asking(List<String> about) {
    return new Doing(Step.ASKING, title, about, told, levels, failed);
  }

  /** They agreed. */
  public Doing agreed() {
    return new Doing(Step.WORKING, title, List.of(), told, levels, failed);
  }

  /** The same with one line more. */
  public Doing telling(String line) {
    List<String> lines = new ArrayList<>(told);
    lines.add(line);
    return new Doing(
        step,
        title,
        asked,
        lines.subList(Math.max(0, lines.size() - MOST_TOLD), lines.size()),
        levels,
        failed);
  }

  /** The same with other levels. */
  public Doing hearing(List<Level> now) {
    return new Doing(step, title, asked, told, now, failed);
  }

  /** It is over. */
  public Doing over() {
    return new Doing(Step.IDLE, title, List.of(), told, levels, failed);
  }

  /** It is over, without a result. */
  public Doing failing(String text, String hint) {
    return new Doing(
        Step.IDLE, title, List.of(), told, levels, Optional.of(new Trouble(text, hint)));
  }
}
