package dev.loopgauge.report.html;

import static j2html.TagCreator.div;
import static j2html.TagCreator.p;

import j2html.tags.DomContent;

/** A path before the show beside the same path after it. */
final class BeforeAfterPart {
  private BeforeAfterPart() {}

  /** The verdict and the table. */
  static DomContent of(Shift shift) {
    return div(
        p(
            shift.changed()
                ? "Changed: by more than the uncertainty of both."
                : "The same, within the uncertainty of both."),
        new Grid("Before and after, and what lies between", "", "before", "after", "change")
            .row(
                "samples", shift.before().inSamples(), shift.after().inSamples(), shift.inSamples())
            .row("ms", shift.before().inMs(), shift.after().inMs(), shift.inMs())
            .html());
  }
}
