package dev.loopgauge.report.html;

import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.When;
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
record Logged(ZonedDateTime at, String show, When when, Delay delay) {
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
                    new Delay(
                        logged.delay().samples(),
                        logged.uncertaintySamples(),
                        logged.delay().rate().hertz())));
  }
}
