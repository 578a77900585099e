package dev.loopgauge.report.form;

import dev.loopgauge.verify.verdict.Aspect;
import dev.loopgauge.verify.verdict.Judgement;
import dev.loopgauge.verify.verdict.OverallVerdict;
import java.util.List;
import java.util.Optional;

/**
 * One verdict over everything that was heard, as documents hold it.
 *
 * @param standing the worst of what was judged
 */
public record VerdictRecord(Optional<Judgement> standing, List<AspectRecord> aspects) {
  /** How one aspect stands. */
  public record AspectRecord(
      Optional<Aspect> aspect, Optional<Judgement> standing, Optional<String> text) {
    /** Whether it stands so. */
    public boolean is(Judgement judgement) {
      return standing.equals(Optional.of(judgement));
    }
  }

  /** Of a verdict. */
  public static VerdictRecord of(OverallVerdict verdict) {
    return new VerdictRecord(
        Optional.of(verdict.judgement()),
        verdict.aspects().stream()
            .map(
                a ->
                    new AspectRecord(
                        Optional.of(a.aspect()), Optional.of(a.judgement()), Optional.of(a.text())))
            .toList());
  }

  /** Whether all that was judged is good. */
  public boolean isGood() {
    return !standing.equals(Optional.of(Judgement.BAD))
        && !standing.equals(Optional.of(Judgement.UNDECIDED));
  }
}
