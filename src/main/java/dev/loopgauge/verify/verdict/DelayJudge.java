package dev.loopgauge.verify.verdict;

import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.PlainNumber;
import java.util.Locale;
import java.util.Optional;

/** Judges a delay by how it compares with its budget. */
final class DelayJudge {
  private DelayJudge() {}

  /** A delay, where there is a budget. */
  static AspectVerdict of(Optional<Comparison> comparison, Method method) {
    return comparison.isPresent()
        ? of(comparison.get(), method)
        : AspectVerdict.notJudged(Aspect.DELAY, "no budget to compare with");
  }

  private static AspectVerdict of(Comparison c, Method method) {
    String off =
        String.format(
            Locale.ROOT,
            "%s ms (%s samples)",
            PlainNumber.of(Math.abs(c.difference().ms()), 2),
            PlainNumber.of(Math.abs(c.difference().samples()), 1));
    return switch (c.verdict()) {
      case WITHIN ->
          AspectVerdict.of(
              Aspect.DELAY,
              true,
              "matches its budget of " + PlainNumber.of(c.predicted().ms(), 2) + " ms");
      case LATE -> AspectVerdict.of(Aspect.DELAY, false, off + " slower than budgeted");
      case EARLY -> AspectVerdict.of(Aspect.DELAY, false, off + " faster than budgeted");
      case UNDECIDED ->
          AspectVerdict.undecided(
              Aspect.DELAY,
              method == Method.UNCALIBRATED
                  ? "the sound card's own delay is in the reading"
                  : "the reading can't tell whether the path is in budget");
    };
  }
}
