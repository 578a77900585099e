package dev.loopgauge.report.logged;

import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.report.form.VerdictRecord.AspectRecord;
import dev.loopgauge.verify.verdict.Aspect;
import dev.loopgauge.verify.verdict.Judgement;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What an entry came to, in words.
 *
 * @param outcome what the delay came to, by the name that documents use
 * @param standing how everything that was heard stands, where that is known
 */
record EntryVerdict(String outcome, Optional<Judgement> standing) {
  /** What a list says of a reading that is bad, but not for its delay. */
  static final String NOT_GOOD = "NOT GOOD";

  private static final String OUTSIDE = "outside-budget";
  private static final String NO_NUMBER = "not-trustworthy";
  private static final String BUDGET = "budget";

  static EntryVerdict of(ListedRecord listed) {
    return new EntryVerdict(listed.outcome(), listed.standing());
  }

  private boolean is(Judgement judgement) {
    return standing.equals(Optional.of(judgement));
  }

  /** Whether something else than the delay is bad. */
  boolean isBadBesideTheDelay() {
    return is(Judgement.BAD) && !outcome.equals(OUTSIDE);
  }

  /** For a column: the worst of delay and all else. */
  String brief(int columns) {
    if (isBadBesideTheDelay()) {
      return NOT_GOOD;
    }
    if (is(Judgement.UNDECIDED) && !outcome.equals(NO_NUMBER)) {
      return "undecided";
    }
    return switch (outcome) {
      case "within-budget" -> "within";
      case OUTSIDE -> "outside";
      case NO_NUMBER -> "no number";
      default -> OneLine.brief(outcome, columns);
    };
  }

  /**
   * For a line: the standing, with the aspects beside the delay that make it, then what the delay
   * came to.
   *
   * @param verdict all of it, as the entry's document holds it
   */
  String line(Optional<VerdictRecord> verdict) {
    if (standing.isEmpty() || is(Judgement.NOT_JUDGED)) {
      return outcome;
    }
    String aspects =
        concerns(verdict)
            .filter(concern -> concern.aspect().orElseThrow() != Aspect.DELAY)
            .map(EntryVerdict::name)
            .collect(Collectors.joining(", "));
    String overall = is(Judgement.BAD) ? NOT_GOOD : standing.orElseThrow().name();
    return overall
        + (aspects.isEmpty() ? "" : " (" + aspects + ")")
        + ", delay "
        + outcome.replace('-', ' ');
  }

  /** Tells each aspect that makes it bad or undecided; why there is no number, findings tell. */
  void tell(Sheet sheet, Optional<VerdictRecord> verdict) {
    concerns(verdict)
        .filter(concern -> !outcome.equals(NO_NUMBER) || !name(concern).equals(BUDGET))
        .forEach(
            concern ->
                concern.text().ifPresent(text -> sheet.row(name(concern), OneLine.line(text))));
  }

  private Stream<AspectRecord> concerns(Optional<VerdictRecord> verdict) {
    return verdict.map(VerdictRecord::aspects).orElse(List.of()).stream()
        .filter(concern -> concern.aspect().isPresent() && concern.standing().equals(standing))
        .filter(concern -> concern.is(Judgement.BAD) || concern.is(Judgement.UNDECIDED));
  }

  /** The figure itself is called the delay. */
  private static String name(AspectRecord concern) {
    Aspect aspect = concern.aspect().orElseThrow();
    return aspect == Aspect.DELAY ? BUDGET : aspect.label().replace('-', ' ');
  }
}
