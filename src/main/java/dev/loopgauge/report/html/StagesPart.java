package dev.loopgauge.report.html;

import dev.loopgauge.chain.Listener;
import dev.loopgauge.report.budget.PathRecord;
import dev.loopgauge.report.budget.StageRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.measured.ComparisonRecord;
import dev.loopgauge.report.plot.Bars;
import dev.loopgauge.report.plot.Bars.Bar;
import dev.loopgauge.report.plot.Bars.Kind;
import dev.loopgauge.report.plot.Bars.Mark;
import dev.loopgauge.report.plot.Lanes.Part;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** A path's stages one after the other, against its listener's limit and what was measured. */
final class StagesPart {
  private final List<Bar> bars = new ArrayList<>();
  private final List<Mark> marks = new ArrayList<>();
  private final Grid grid =
      new Grid("Stages and their delays", "Stage", "Kind", "ms", "samples").words(2);
  private final PathRecord budget;
  private final Optional<ReadDocument> reading;
  private final Function<String, Part> kinds;

  private StagesPart(
      PathRecord budget, Optional<ReadDocument> reading, Function<String, Part> kinds) {
    this.budget = budget;
    this.kinds = kinds;
    this.reading = reading;
    stages();
    addMark(budget.cautionMs(), "caution", false);
    addMark(budget.limitMs(), "limit", true);
  }

  /** The figure of a path; empty for a budget without stages. */
  static Optional<PlotFigure> of(
      PathRecord budget, Optional<ReadDocument> reading, Budgets budgets) {
    if (budget.stages().isEmpty()) {
      return Optional.empty();
    }
    StagesPart part = new StagesPart(budget, reading, stage -> budgets.kind(budget.name(), stage));
    return Optional.of(
        new PlotFigure(
            new Bars("milliseconds", part.bars, part.marks),
            "Stages of " + budget.name(),
            part.description(),
            part.grid));
  }

  /** By how much the listener hears a measured path too late, in a sentence. */
  static Optional<String> overLimit(PathRecord budget, ReadDocument reading) {
    StagesPart part = new StagesPart(budget, Optional.of(reading), StageKinds::named);
    Optional<Double> limit = budget.limitMs().map(BigDecimal::doubleValue);
    return part.heardMs()
        .filter(heard -> limit.isPresent() && heard > limit.get())
        .map(
            heard ->
                "Over its listener's limit: heard after %s, %s more than the %s of %s."
                    .formatted(
                        inMs(heard),
                        inMs(heard - limit.get()),
                        brief(limit.get()),
                        budget.listener().map(Listener::label).orElse("the listener")));
  }

  private void stages() {
    double at = 0;
    for (StageRecord stage : budget.stages()) {
      double ms = stage.delayMs().map(BigDecimal::doubleValue).orElse(0.0);
      String name = stage.name();
      bars.add(new Bar(Kind.PART, name, at, at + ms, inMs(ms)));
      grid.row(
          name, kinds.apply(name).label(), Numbers.plain(ms, 3), samples(stage.delaySamples()));
      at += ms;
    }
    double all = budget.delayMs().doubleValue();
    bars.add(new Bar(Kind.PLANNED, "budget, all stages", 0, all, inMs(all)));
    grid.row("budget, all stages", "", Numbers.plain(all, 3), samples(budget.delaySamples()));
    heardMs()
        .ifPresent(
            heard -> {
              bars.add(new Bar(Kind.MEASURED, measuredName(), 0, heard, inMs(heard)));
              grid.row(measuredName(), "", Numbers.plain(heard, 3), heardSamples(heard));
            });
  }

  /** What the listener hears: the budget of all stages and what was measured beyond the loop's. */
  private Optional<Double> heardMs() {
    return comparison()
        .flatMap(ComparisonRecord::differenceMs)
        .map(difference -> budget.delayMs().add(difference).doubleValue());
  }

  private String heardSamples(double heardMs) {
    return reading
        .flatMap(ReadDocument::delay)
        .map(delay -> Numbers.brief(heardMs * delay.rateHz() / 1000, 2))
        .orElse("");
  }

  private Optional<ComparisonRecord> comparison() {
    return reading.flatMap(ReadDocument::comparison);
  }

  /** Whether stages of the path were not in what was measured, such as metres of air. */
  private boolean partly() {
    Optional<BigDecimal> loop = comparison().flatMap(ComparisonRecord::predictedMs);
    return loop.isPresent() && loop.get().subtract(budget.delayMs()).abs().doubleValue() > 1e-3;
  }

  private String measuredName() {
    return partly() ? "measured, rest planned" : "measured";
  }

  private void addMark(Optional<BigDecimal> at, String name, boolean firm) {
    at.map(BigDecimal::doubleValue)
        .ifPresent(ms -> marks.add(new Mark(name + " " + brief(ms), ms, firm)));
  }

  private String description() {
    String listener = budget.listener().map(who -> " for " + who.label()).orElse("");
    String limit =
        budget
            .limitMs()
            .map(BigDecimal::doubleValue)
            .map(ms -> "; the limit" + listener + " is " + brief(ms) + source())
            .orElse("; there is no limit" + listener);
    String rest =
        partly() ? " Stages that the measurement doesn't run through count as planned." : "";
    return "Each stage begins where the one above it ends. Planned are "
        + inMs(budget.delayMs().doubleValue())
        + heardMs().map(ms -> ", measured " + inMs(ms)).orElse("")
        + limit
        + "."
        + rest;
  }

  private String source() {
    return budget.limitSource().map(rule -> " (" + rule + ")").orElse("");
  }

  private static String samples(Optional<BigDecimal> delay) {
    return delay.map(count -> Numbers.brief(count.doubleValue(), 2)).orElse("");
  }

  private static String inMs(double ms) {
    return Numbers.plain(ms, 2) + " ms";
  }

  private static String brief(double ms) {
    return Numbers.brief(ms, 2) + " ms";
  }
}
