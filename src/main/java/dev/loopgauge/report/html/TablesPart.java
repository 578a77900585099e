package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Fields;
import dev.loopgauge.report.form.Numbers;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Documents that are told best by a table alone: channels, pairs, plans, alignments, soaks. */
final class TablesPart {
  private TablesPart() {}

  /** The section; empty for another document. */
  static Optional<Section> of(Fields document, String id) {
    if (!document.parts("channels").isEmpty()) {
      return section(id, "Channel by channel", channels(document));
    }
    if (!document.parts("pairs").isEmpty()) {
      return section(id, "Every two channels", pairs(document));
    }
    if (!document.parts("choices").isEmpty()) {
      return section(id, "What to choose", choices(document));
    }
    if (document.has("conflicts")) {
      return section(id, "What to add", alignment(document));
    }
    return document
        .part("soak")
        .flatMap(soak -> section(id, "Over a long time", SoakTables.of(soak)));
  }

  private static Optional<Section> section(String id, String heading, List<DomContent> content) {
    return Optional.of(new Section(id + "-part", heading, content));
  }

  private static List<DomContent> channels(Fields document) {
    Grid grid = new Grid("Each return channel", "Channel", "Outcome", "samples", "ms").words(2);
    for (Fields channel : document.parts("channels")) {
      Optional<Delay> delay = channel.part("measurement").flatMap(Delay::of);
      grid.row(
          number(channel, "channel", 0),
          channel.text("outcome").orElse(""),
          delay.map(Delay::inSamples).orElse("-"),
          delay.map(d -> Numbers.plain(d.ms(), 3)).orElse("-"));
    }
    return List.of(grid.html());
  }

  private static List<DomContent> pairs(Fields document) {
    Grid grid = new Grid("How much later in the second channel", "Channels", "samples", "likeness");
    for (Fields pair : document.parts("pairs")) {
      grid.row(
          number(pair, "from", 0) + " to " + number(pair, "to", 0),
          number(pair, "delaySamples", 2),
          number(pair, "likeness", 2));
    }
    return List.of(grid.html());
  }

  private static List<DomContent> choices(Fields document) {
    Grid grid =
        new Grid(
            "Settings that keep everybody within limits, the best first",
            "Block",
            "Hz",
            "block, ms");
    document
        .parts("choices")
        .forEach(
            choice ->
                grid.row(
                    number(choice, "blockSize", 0),
                    number(choice, "sampleRateHz", 0),
                    number(choice, "blockMs", 3)));
    List<DomContent> content = new ArrayList<>(List.of(grid.html()));
    document.part("limit").ifPresent(limit -> content.add(breach(limit).html()));
    return content;
  }

  private static Grid breach(Fields limit) {
    return new Grid("What breaks first beyond them", "Path", "Rule", "Block", "over, ms")
        .words(2)
        .row(
            limit.text("path").orElse("-"),
            limit.text("rule").orElse("-"),
            number(limit, "blockSize", 0),
            number(limit, "overMs", 2));
  }

  private static List<DomContent> alignment(Fields document) {
    List<DomContent> content = new ArrayList<>();
    for (Fields mix : document.parts("mixes")) {
      String meet = mix.text("target").map(path -> "; all meet " + path).orElse("");
      Grid grid =
          new Grid("Mix " + mix.text("name").orElse("") + meet, "Path", "add, samples", "add, ms");
      mix.parts("paths")
          .forEach(
              path ->
                  grid.row(
                      path.text("path").orElse("-"),
                      number(path, "addSamples", 2),
                      number(path, "addMs", 3)));
      content.add(grid.html());
    }
    return content;
  }

  /** A number with its decimals, or a dash. */
  static String number(Fields fields, String key, int decimals) {
    return fields.number(key).map(value -> Numbers.plain(value, decimals)).orElse("-");
  }
}
