package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.report.form.VerdictRecord.AspectRecord;
import dev.loopgauge.verify.verdict.Aspect;
import dev.loopgauge.verify.verdict.Judgement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The first line of a reading: the worst of its verdict in words.
 *
 * @param delayLine what the delay comes to: a word or two, a colon and a sentence
 * @param delay how the delay stands, where it is judged
 * @param concerns what else is not as it should be, the worst first
 */
public record Headline(String delayLine, Optional<Judgement> delay, List<AspectRecord> concerns) {
  /**
   * What spoils a reading in one word or two; what makes the delay itself doubtful stands first.
   */
  private static final Map<Aspect, String> WORDS =
      Map.of(
          Aspect.LOST_SOUND, "SOUND LOST",
          Aspect.CLOCKS, "NOT LOCKED",
          Aspect.CLIPPING, "CLIPPED",
          Aspect.POLARITY, "INVERTED",
          Aspect.LEVEL, "WRONG LEVEL",
          Aspect.RESPONSE, "UNEVEN",
          Aspect.HOST, "WRONGLY REPORTED",
          Aspect.PICTURE, "OUT OF LIP SYNC");

  private static final List<Aspect> ORDER =
      List.of(
          Aspect.LOST_SOUND,
          Aspect.CLOCKS,
          Aspect.CLIPPING,
          Aspect.POLARITY,
          Aspect.LEVEL,
          Aspect.RESPONSE,
          Aspect.HOST,
          Aspect.PICTURE);

  /** Of a measurement that holds a number. */
  static Headline of(
      MeasurementRecord m,
      Outcome outcome,
      Optional<ComparisonRecord> comparison,
      Optional<VerdictRecord> verdict) {
    boolean unsure = m.ambiguous().orElse(comparison.isEmpty() && outcome == Outcome.UNDECIDED);
    ShownDelay shown = comparison.isPresent() ? m.budgeted() : m.delay();
    return of(Verdicts.line(shown, m.isUncalibrated(), unsure, comparison), verdict);
  }

  /** Of a delay in words, and the verdict that it is a part of. */
  static Headline of(String delayLine, Optional<VerdictRecord> verdict) {
    List<AspectRecord> aspects = verdict.isPresent() ? verdict.get().aspects() : List.of();
    List<AspectRecord> bad = told(aspects, Judgement.BAD);
    return new Headline(
        delayLine, delay(aspects), bad.isEmpty() ? told(aspects, Judgement.UNDECIDED) : bad);
  }

  private static Optional<Judgement> delay(List<AspectRecord> aspects) {
    for (AspectRecord one : aspects) {
      if (one.aspect().orElse(null) == Aspect.DELAY) {
        return one.standing();
      }
    }
    return Optional.empty();
  }

  private static List<AspectRecord> told(List<AspectRecord> aspects, Judgement judgement) {
    List<AspectRecord> told = new ArrayList<>();
    for (Aspect aspect : ORDER) {
      for (AspectRecord one : aspects) {
        if (one.is(judgement) && one.aspect().orElse(null) == aspect) {
          told.add(one);
        }
      }
    }
    return told;
  }

  /** The line. */
  public String line() {
    if (concerns.isEmpty()) {
      return delayLine;
    }
    int colon = delayLine.indexOf(": ");
    String lead = delayLine.substring(0, colon);
    String sentence = delayLine.substring(colon + 2, delayLine.length() - 1);
    String words = concerns.stream().map(Headline::word).collect(Collectors.joining(" AND "));
    String texts =
        concerns.stream().flatMap(a -> a.text().stream()).collect(Collectors.joining("; "));
    boolean delayIsBad = delay.equals(Optional.of(Judgement.BAD));
    if (spoilsTheDelay() && !delayIsBad) {
      return words + ": " + texts + "; " + sentence + ".";
    }
    return lead
        + (delayIsBad ? ", AND " : ", BUT ")
        + words
        + ": "
        + sentence
        + ", but "
        + texts
        + ".";
  }

  private boolean spoilsTheDelay() {
    Aspect first = concerns.get(0).aspect().orElseThrow();
    return concerns.get(0).is(Judgement.BAD)
        && (first == Aspect.LOST_SOUND || first == Aspect.CLOCKS);
  }

  private static String word(AspectRecord concern) {
    Aspect aspect = concern.aspect().orElseThrow();
    if (concern.is(Judgement.UNDECIDED)) {
      return aspect.name() + " UNDECIDED";
    }
    String text = concern.text().orElse("");
    if (aspect == Aspect.LOST_SOUND && text.startsWith("the delay jumped")) {
      return "JUMPED";
    }
    boolean inverted = aspect == Aspect.POLARITY && text.endsWith("not inverted");
    return (inverted ? "NOT " : "") + WORDS.get(aspect);
  }
}
