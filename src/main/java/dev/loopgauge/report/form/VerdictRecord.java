package dev.loopgauge.report.form;

import dev.loopgauge.verify.verdict.Aspect;
import dev.loopgauge.verify.verdict.AspectVerdict;
import dev.loopgauge.verify.verdict.Judgement;
import dev.loopgauge.verify.verdict.OverallVerdict;
import java.util.ArrayList;
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
    List<AspectRecord> aspects = new ArrayList<>();
    for (AspectVerdict one : verdict.aspects()) {
      aspects.add(
          new AspectRecord(
              Optional.of(one.aspect()), Optional.of(one.judgement()), Optional.of(one.text())));
    }
    return new VerdictRecord(Optional.of(verdict.judgement()), aspects);
  }

  /** Whether all that was judged is good. */
  public boolean isGood() {
    return !standing.equals(Optional.of(Judgement.BAD))
        && !standing.equals(Optional.of(Judgement.UNDECIDED));
  }
}
