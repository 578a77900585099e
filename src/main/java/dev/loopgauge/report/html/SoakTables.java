package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.measured.SoakRecord;
import dev.loopgauge.report.measured.SoakRecord.MomentRecord;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What happened in a soak. */
final class SoakTables {
  private SoakTables() {}

  /** How often, and when what. */
  static List<DomContent> of(SoakRecord soak) {
    List<DomContent> content = new ArrayList<>();
    content.add(
        new Grid("What was counted", "What", "Figure")
            .row("takes", count(soak.takes()))
            .row("with sound lost", count(soak.dropouts()))
            .row("with a jump of the delay", count(soak.steps()))
            .row("unreadable", count(soak.unreadableTakes()))
            .row("failed", count(soak.failedTakes()))
            .row("longest without any, s", TablesPart.plain(soak.longestCleanSeconds(), 1))
            .row("delay, samples", TablesPart.plain(soak.delaySamples(), 2))
            .row("ranged over, samples", TablesPart.plain(soak.rangeSamples(), 2))
            .html());
    if (!soak.moments().isEmpty()) {
      Grid grid = new Grid("When what happened", "at", "What").words(2);
      soak.moments().forEach(moment -> row(grid, moment));
      content.add(grid.html());
    }
    return content;
  }

  private static void row(Grid grid, MomentRecord moment) {
    grid.row(Numbers.clock(moment.atSeconds().doubleValue()), moment.text().orElse("-"));
  }

  private static String count(Optional<Integer> count) {
    return count.map(String::valueOf).orElse("-");
  }
}
