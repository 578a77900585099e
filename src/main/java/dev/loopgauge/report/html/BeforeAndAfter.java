package dev.loopgauge.report.html;

import dev.loopgauge.journal.AspectChanges;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.logged.AspectWords;
import dev.loopgauge.report.logged.KeptDocument;
import dev.loopgauge.verify.Shift;
import java.util.List;
import java.util.Optional;

/**
 * The same path before and after.
 *
 * @param before the delay before
 * @param after the delay after, at the same rate
 * @param others what changed beside the delay, in words
 */
record BeforeAndAfter(ShownDelay before, ShownDelay after, List<String> others) {
  /** Between two readings; empty where one has no number, or the rates differ. */
  static Optional<BeforeAndAfter> of(ReadDocument before, ReadDocument after) {
    return before
        .delay()
        .flatMap(
            first ->
                after
                    .delay()
                    .filter(second -> second.rateHz() == first.rateHz())
                    .map(second -> new BeforeAndAfter(first, second, others(before, after))));
  }

  private static List<String> others(ReadDocument before, ReadDocument after) {
    return AspectChanges.beside(
            KeptDocument.of(before.json()).summary(), KeptDocument.of(after.json()).summary())
        .stream()
        .map(change -> AspectWords.name(change.aspect()) + ": " + AspectWords.of(change))
        .toList();
  }

  /** The uncertainties together by the root of the sum of squares (JCGM 100:2008, 5.1.2). */
  private Shift shift() {
    return new Shift(
        after.samples() - before.samples(),
        Math.hypot(before.uncertaintySamples(), after.uncertaintySamples()));
  }

  /** Whether the delay moved, judged as `journal compare` does. */
  boolean moved() {
    return shift().moved();
  }

  /** Whether anything changed, judged as `journal compare` does. */
  boolean changed() {
    return moved() || !others.isEmpty();
  }

  /** {@code +64.00 ± 0.06}. */
  String inSamples() {
    return Numbers.signedPlusMinus(shift().samples(), shift().uncertaintySamples(), 3);
  }

  /** {@code +1.333 ± 0.002}. */
  String inMs() {
    return Numbers.signedPlusMinus(
        after.toMs(shift().samples()), after.toMs(shift().uncertaintySamples()), 4);
  }
}
