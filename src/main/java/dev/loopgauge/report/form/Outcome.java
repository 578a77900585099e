package dev.loopgauge.report.form;

import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.verify.Comparison;
import java.util.Locale;
import java.util.Optional;

/** What a measurement came to, by the names that documents use. */
public enum Outcome {
  /** A trustworthy number, with no budget to compare it with. */
  MEASURED,
  /** The path matches its budget. */
  WITHIN_BUDGET,
  /** The path is slower or faster than budgeted. */
  OUTSIDE_BUDGET,
  /**
   * A trustworthy number that doesn't settle whether the path keeps its budget, or beside which
   * another arrival may be the path.
   */
  UNDECIDED,
  /** No trustworthy number. */
  NOT_TRUSTWORTHY;

  /** The outcome of an estimate and of its comparison with a budget, where there is one. */
  public static Outcome of(Estimate estimate, Optional<Comparison> comparison) {
    if (!(estimate instanceof Estimate.Found found)) {
      return NOT_TRUSTWORTHY;
    }
    if (comparison.isPresent()) {
      return of(comparison.get());
    }
    return found.measurement().ambiguous() ? UNDECIDED : MEASURED;
  }

  /** The outcome of a comparison with a budget. */
  public static Outcome of(Comparison comparison) {
    return switch (comparison.verdict()) {
      case WITHIN -> WITHIN_BUDGET;
      case EARLY, LATE -> OUTSIDE_BUDGET;
      case UNDECIDED -> UNDECIDED;
    };
  }

  /** The name in documents. */
  public String label() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
