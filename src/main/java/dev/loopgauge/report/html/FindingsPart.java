package dev.loopgauge.report.html;

import static j2html.TagCreator.dd;
import static j2html.TagCreator.div;
import static j2html.TagCreator.dl;
import static j2html.TagCreator.dt;
import static j2html.TagCreator.each;
import static j2html.TagCreator.p;
import static j2html.TagCreator.text;

import dev.loopgauge.report.form.FindingRecord;
import j2html.tags.DomContent;
import java.util.List;

/** What a person must know about a capture, each with what to try. */
final class FindingsPart {
  private FindingsPart() {}

  /** The list, or a sentence that there is nothing. */
  static DomContent of(List<FindingRecord> findings) {
    if (findings.isEmpty()) {
      return p("None: nothing was clipped, lost, inverted or doubled.");
    }
    return dl(each(findings, FindingsPart::finding)).withClass("findings");
  }

  private static DomContent finding(FindingRecord finding) {
    return div(
        dt(Escaping.isolated(finding.text().or(finding::code).orElse(""))),
        dd(text("Try: "), Escaping.isolated(finding.hint().orElse("-"))));
  }
}
