package dev.loopgauge.verify.verdict;

/**
 * How one aspect stands.
 *
 * @param text what was heard and what was expected: a clause without a capital or a full stop
 */
public record AspectVerdict(Aspect aspect, Judgement judgement, String text) {
  /** As it should be, or not. */
  public static AspectVerdict of(Aspect aspect, boolean good, String text) {
    return new AspectVerdict(aspect, good ? Judgement.GOOD : Judgement.BAD, text);
  }

  /** Something that can't be told, although it should be. */
  static AspectVerdict undecided(Aspect aspect, String text) {
    return new AspectVerdict(aspect, Judgement.UNDECIDED, text);
  }

  /** Something that nothing was expected of, or that can't be seen here. */
  public static AspectVerdict notJudged(Aspect aspect, String text) {
    return new AspectVerdict(aspect, Judgement.NOT_JUDGED, text);
  }

  /**
   * A figure against what it should be: good where its whole interval of uncertainty lies within
   * the tolerance, bad where none of it does, else undecided.
   *
   * @param off how far off it is
   * @param uncertainty the expanded uncertainty of that, k = 2
   */
  static AspectVerdict measured(
      Aspect aspect, double off, double uncertainty, double tolerance, String text) {
    double distance = Math.abs(off);
    if (distance + uncertainty <= tolerance) {
      return of(aspect, true, text);
    }
    return distance - uncertainty > tolerance ? of(aspect, false, text) : undecided(aspect, text);
  }
}
