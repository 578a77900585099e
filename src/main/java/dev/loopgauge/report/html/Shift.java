package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Numbers;
import java.util.Optional;

/**
 * The same path before and after.
 *
 * @param before the delay before
 * @param after the delay after, at the same rate
 */
record Shift(Delay before, Delay after) {
  /** Between two readings; empty where one has no number, or the rates differ. */
  static Optional<Shift> of(Reading before, Reading after) {
    return before
        .delay()
        .flatMap(
            first ->
                after
                    .delay()
                    .filter(second -> second.rateHz() == first.rateHz())
                    .map(second -> new Shift(first, second)));
  }

  /** How much later it became, in samples. */
  double samples() {
    return after.samples() - before.samples();
  }

  /** The expanded uncertainty of that, by the root of the sum of squares (JCGM 100:2008, 5.1.2). */
  double uncertaintySamples() {
    return Math.hypot(before.uncertaintySamples(), after.uncertaintySamples());
  }

  /** Whether it is more than the uncertainty. */
  boolean changed() {
    return Math.abs(samples()) > uncertaintySamples();
  }

  /** {@code +64.00 ± 0.06}. */
  String inSamples() {
    return Numbers.signedPlusMinus(samples(), uncertaintySamples(), 3);
  }

  /** {@code +1.333 ± 0.002}. */
  String inMs() {
    return Numbers.signedPlusMinus(after.toMs(samples()), after.toMs(uncertaintySamples()), 4);
  }
}
