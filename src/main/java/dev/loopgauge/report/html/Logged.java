package dev.loopgauge.report.html;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.ShownDelay;
import java.time.ZonedDateTime;
import java.util.Optional;

/**
 * A trusted reading in the journal.
 *
 * @param at when it was measured
 * @param show at which show
 * @param when in which part of its day
 * @param delay the delay
 */
record Logged(ZonedDateTime at, String show, When when, ShownDelay delay) {
  /** Of an entry's heading; empty where there is no number, or one without uncertainty. */
  static Optional<Logged> of(Heading heading) {
    return heading
        .delay()
        .filter(logged -> logged.uncertaintySamples() > 0)
        .map(
            logged ->
                new Logged(
                    heading.at(),
                    heading.show(),
                    heading.when(),
                    new ShownDelay(
                        logged.delay().samples(),
                        logged.uncertaintySamples(),
                        logged.delay().rate().hertz())));
  }
}
