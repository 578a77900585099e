package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Fields;
import dev.loopgauge.report.form.Numbers;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;

/** What happened in a soak. */
final class SoakTables {
  private SoakTables() {}

  /** How often, and when what. */
  static List<DomContent> of(Fields soak) {
    List<DomContent> content = new ArrayList<>();
    content.add(
        new Grid("What was counted", "What", "Figure")
            .row("takes", TablesPart.number(soak, "takes", 0))
            .row("with sound lost", TablesPart.number(soak, "dropouts", 0))
            .row("with a step of the delay", TablesPart.number(soak, "steps", 0))
            .row("unreadable", TablesPart.number(soak, "unreadableTakes", 0))
            .row("failed", TablesPart.number(soak, "failedTakes", 0))
            .row("longest without any, s", TablesPart.number(soak, "longestCleanSeconds", 1))
            .row("delay, samples", TablesPart.number(soak, "delaySamples", 2))
            .row("ranged over, samples", TablesPart.number(soak, "rangeSamples", 2))
            .html());
    List<Fields> moments = soak.parts("moments");
    if (!moments.isEmpty()) {
      Grid grid = new Grid("When what happened", "at", "What").words(2);
      moments.forEach(
          moment ->
              grid.row(
                  Numbers.clock(moment.number("atSeconds").orElse(0.0)),
                  moment.text("text").orElse("-")));
      content.add(grid.html());
    }
    return content;
  }
}
