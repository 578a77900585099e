package dev.loopgauge.report.html;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.measured.ChannelsDocument;
import dev.loopgauge.report.measured.ChannelsDocument.ChannelRecord;
import dev.loopgauge.report.measured.MeasurementRecord;
import dev.loopgauge.report.measured.PairsDocument;
import dev.loopgauge.report.measured.PairsDocument.PairRecord;
import dev.loopgauge.report.measured.SoakDocument;
import dev.loopgauge.report.planned.AlignmentDocument;
import dev.loopgauge.report.planned.AlignmentDocument.AlignedRecord;
import dev.loopgauge.report.planned.AlignmentDocument.MixRecord;
import dev.loopgauge.report.planned.BreachRecord;
import dev.loopgauge.report.planned.ChoiceRecord;
import dev.loopgauge.report.planned.PlanDocument;
import j2html.tags.DomContent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Documents that are told best by a table alone: channels, pairs, plans, alignments, soaks. */
final class TablesPart {
  private TablesPart() {}

  /** The section; empty for another document. */
  static Optional<Section> of(Document document, String id) {
    if (document instanceof ChannelsDocument channels) {
      return section(id, "Channel by channel", channels(channels.channels()));
    }
    if (document instanceof PairsDocument pairs) {
      return section(id, "Every two channels", pairs(pairs.pairs()));
    }
    if (document instanceof PlanDocument plan) {
      return section(id, "What to choose", choices(plan));
    }
    if (document instanceof AlignmentDocument alignment) {
      return section(id, "What to add", alignment(alignment.mixes()));
    }
    return document instanceof SoakDocument soak
        ? section(id, "Over a long time", SoakTables.of(soak.soak()))
        : Optional.empty();
  }

  private static Optional<Section> section(String id, String heading, List<DomContent> content) {
    return content.isEmpty()
        ? Optional.empty()
        : Optional.of(new Section(id + "-part", heading, content));
  }

  private static List<DomContent> channels(List<ChannelRecord> channels) {
    Grid grid = new Grid("Each return channel", "Channel", "Outcome", "samples", "ms").words(2);
    for (ChannelRecord channel : channels) {
      Optional<ShownDelay> delay = channel.measurement().map(MeasurementRecord::delay);
      grid.row(
          String.valueOf(channel.channel()),
          channel.outcome().label(),
          delay.map(ShownDelay::inSamples).orElse("-"),
          delay.map(d -> Numbers.plain(d.ms(), 3)).orElse("-"));
    }
    return channels.isEmpty() ? List.of() : List.of(grid.html());
  }

  private static List<DomContent> pairs(List<PairRecord> pairs) {
    Grid grid =
        new Grid("How much later in the second channel", "Channels", "samples", "correlation");
    for (PairRecord pair : pairs) {
      grid.row(
          pair.from() + " to " + pair.to(),
          plain(pair.delaySamples(), 2),
          plain(pair.likeness(), 2));
    }
    return pairs.isEmpty() ? List.of() : List.of(grid.html());
  }

  private static List<DomContent> choices(PlanDocument plan) {
    if (plan.choices().isEmpty()) {
      return List.of();
    }
    Grid grid =
        new Grid(
            "Settings that keep everybody within limits, the best first",
            "Block",
            "Hz",
            "block, ms");
    for (ChoiceRecord choice : plan.choices()) {
      grid.row(
          String.valueOf(choice.blockSize()),
          String.valueOf(choice.sampleRateHz()),
          plain(choice.blockMs(), 3));
    }
    List<DomContent> content = new ArrayList<>(List.of(grid.html()));
    plan.limit().ifPresent(limit -> content.add(breach(limit).html()));
    return content;
  }

  private static Grid breach(BreachRecord limit) {
    return new Grid("What breaks first beyond them", "Path", "Rule", "Block", "over, ms")
        .words(2)
        .row(
            limit.path(),
            limit.rule().orElse("-"),
            String.valueOf(limit.blockSize()),
            plain(limit.overMs(), 2));
  }

  private static List<DomContent> alignment(List<MixRecord> mixes) {
    List<DomContent> content = new ArrayList<>();
    for (MixRecord mix : mixes) {
      String meet = mix.target().map(path -> "; all meet " + path).orElse("");
      Grid grid = new Grid("Mix " + mix.name() + meet, "Path", "add, samples", "add, ms");
      for (AlignedRecord path : mix.paths()) {
        grid.row(
            path.path(),
            plain(Optional.of(path.addSamples()), 2),
            plain(Optional.of(path.addMs()), 3));
      }
      content.add(grid.html());
    }
    return content;
  }

  /** A number with its decimals, or a dash. */
  static String plain(Optional<BigDecimal> number, int decimals) {
    return number.map(known -> Numbers.plain(known.doubleValue(), decimals)).orElse("-");
  }
}
