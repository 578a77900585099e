package dev.loopgauge.report.html;

import static j2html.TagCreator.h2;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.pre;
import static j2html.TagCreator.section;
import static j2html.TagCreator.text;

import dev.loopgauge.journal.ChainText;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What was measured with what, so that another engineer can do it again. */
final class RepeatPart {
  private final List<ReadDocument> repeatable;
  private final List<ReadDocument> others;
  private final SharedFacts facts;

  /** The part of all readings. */
  RepeatPart(List<ReadDocument> readings) {
    repeatable = readings.stream().filter(RepeatPart::isToRepeat).toList();
    others = readings.stream().filter(reading -> !isToRepeat(reading)).toList();
    facts = new SharedFacts(repeatable);
  }

  private static boolean isToRepeat(ReadDocument reading) {
    return reading.entry().isPresent() || reading.delay().isPresent();
  }

  /** What all readings have in common; nothing without one. */
  List<DomContent> shared() {
    if (repeatable.isEmpty()) {
      return List.of();
    }
    return List.of(
        section(h2("Measured with").withId("shared"), facts.shared().html())
            .attr("aria-labelledby", "shared"));
  }

  /** What differs from reading to reading, and the chain files. */
  DomContent folded(boolean open) {
    List<DomContent> content = new ArrayList<>();
    if (!repeatable.isEmpty()) {
      content.add(readings().html());
    }
    Grid different = facts.different();
    if (!different.isEmpty()) {
      content.add(different.html());
    }
    if (!others.isEmpty()) {
      Grid grid = new Grid("Other documents", "From", "Command", "Outcome").words(3);
      others.forEach(other -> grid.row(other.source(), other.command(), other.outcome()));
      content.add(grid.html());
    }
    chains().values().forEach(chain -> chain(content, chain));
    return Fold.of("repeat", open, text("How to repeat it"), content);
  }

  private Grid readings() {
    Grid grid = new Grid("Readings", "Path", "Measured", "From").words(3);
    for (ReadDocument reading : repeatable) {
      String at = reading.entry().map(entry -> Moments.told(entry.heading().at())).orElse("-");
      grid.row(SharedFacts.told(reading), at, reading.source());
    }
    return grid;
  }

  private Map<String, ChainText> chains() {
    Map<String, ChainText> chains = new LinkedHashMap<>();
    repeatable.stream()
        .flatMap(reading -> reading.entry().stream())
        .flatMap(entry -> entry.chain().stream())
        .forEach(chain -> chains.putIfAbsent(Facts.named(chain), chain));
    return chains;
  }

  private static void chain(List<DomContent> content, ChainText chain) {
    content.add(h3(text("Chain file "), Escaping.isolated(Facts.named(chain))));
    content.add(pre(chain.text()));
  }
}
