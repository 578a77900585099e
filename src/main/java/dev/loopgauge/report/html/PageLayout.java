package dev.loopgauge.report.html;

import java.util.Optional;

/**
 * How a report is to look.
 *
 * @param by who measured, in their own words
 * @param full whether all is drawn and unfolded, however long the page gets
 */
public record PageLayout(Optional<String> by, boolean full) {
  /** Nothing asked for. */
  public static final PageLayout PLAIN = new PageLayout(Optional.empty(), false);
}
