package dev.loopgauge.report.html;

import dev.loopgauge.chain.Listener;
import dev.loopgauge.report.budget.JudgedRecord;
import dev.loopgauge.report.budget.PathRecord;
import dev.loopgauge.report.budget.SeatRecord;
import dev.loopgauge.report.budget.StageRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.measured.ComparisonRecord;
import dev.loopgauge.report.plot.Lanes.Part;
import dev.loopgauge.report.plot.Lanes.Row;
import dev.loopgauge.report.plot.Lanes.Segment;
import dev.loopgauge.verify.verdict.Judgement;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When one path is heard: its electronics as predicted and as measured, and the air after them.
 *
 * @param budget what is predicted, where that is known
 * @param reading the last measurement, where there is one
 * @param parts the electronics by their kind, in ms one after the other
 */
record Heard(
    String name,
    Judgement standing,
    Optional<PathRecord> budget,
    Optional<ReadDocument> reading,
    List<Segment> parts) {
  /** Of a path that was measured. */
  static Heard of(PathStory path, Budgets budgets) {
    return new Heard(
        path.name(),
        path.standing(),
        path.budget(),
        Optional.of(path.latest()),
        path.budget().map(budget -> parts(budget, budgets)).orElse(List.of()));
  }

  /** Of a path that was predicted alone. */
  static Heard of(PathRecord budget, Budgets budgets) {
    return new Heard(
        budget.name(),
        Judgement.NOT_JUDGED,
        Optional.of(budget),
        Optional.empty(),
        parts(budget, budgets));
  }

  /** The electronics; neighbours of one kind become one segment. */
  private static List<Segment> parts(PathRecord budget, Budgets budgets) {
    List<Segment> parts = new ArrayList<>();
    double at = 0;
    for (StageRecord stage : budget.stages()) {
      Part part = budgets.kind(budget.name(), stage.name());
      double ms = stage.delayMs().map(BigDecimal::doubleValue).orElse(0.0);
      if (part == Part.AIR || ms <= 0) {
        continue;
      }
      int last = parts.size() - 1;
      if (last >= 0 && parts.get(last).part() == part) {
        parts.set(last, new Segment(part, parts.get(last).fromMs(), at + ms));
      } else {
        parts.add(new Segment(part, at, at + ms));
      }
      at += ms;
    }
    return parts;
  }

  /** Who hears it. */
  Optional<Listener> listener() {
    return budget.flatMap(PathRecord::listener);
  }

  /** What the electronics are predicted to take; empty without a budget. */
  OptionalDouble electronicsMs() {
    boolean unknown = parts.isEmpty() && airMs() <= 0;
    return budget.isEmpty() || unknown
        ? OptionalDouble.empty()
        : OptionalDouble.of(parts.isEmpty() ? 0 : parts.get(parts.size() - 1).toMs());
  }

  /** When the electronics were measured to be through; stages out of the loop as predicted. */
  OptionalDouble measuredMs() {
    Optional<Double> difference =
        reading
            .flatMap(ReadDocument::comparison)
            .flatMap(ComparisonRecord::differenceMs)
            .map(BigDecimal::doubleValue);
    OptionalDouble planned = electronicsMs();
    if (difference.isPresent() && planned.isPresent()) {
      return OptionalDouble.of(planned.getAsDouble() + difference.get());
    }
    return reading
        .flatMap(ReadDocument::delay)
        .map(ShownDelay::ms)
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }

  /** The air of its stages, or to the seat that it is judged at, or to the farthest. */
  double airMs() {
    return budget.flatMap(Heard::seatAir).orElseGet(() -> budget.map(this::stageAir).orElse(0.0));
  }

  private static Optional<Double> seatAir(PathRecord budget) {
    String against = budget.judged().map(JudgedRecord::against).orElse("");
    return budget.positions().stream()
        .filter(seat -> against.endsWith(" at " + seat.name()))
        .findFirst()
        .or(() -> budget.positions().stream().max(Comparator.comparing(SeatRecord::delayMs)))
        .map(seat -> seat.delayMs().subtract(budget.delayMs()).doubleValue());
  }

  private double stageAir(PathRecord path) {
    double all = path.delayMs().doubleValue();
    double electronics = parts.isEmpty() ? 0 : parts.get(parts.size() - 1).toMs();
    return path.stages().isEmpty() ? 0 : Math.max(0, all - electronics);
  }

  /** Its listener's limit, in ms of what that is applied to. */
  OptionalDouble limitMs() {
    return budget
        .flatMap(PathRecord::limitMs)
        .map(limit -> OptionalDouble.of(limit.doubleValue()))
        .orElse(OptionalDouble.empty());
  }

  /** The row in the picture. */
  Row row() {
    OptionalDouble planned = electronicsMs();
    OptionalDouble measured = measuredMs();
    double air = airMs();
    List<Segment> segments = new ArrayList<>(parts);
    planned.ifPresent(end -> addAir(segments, end, air));
    double through = measured.orElse(planned.orElse(0));
    String figure =
        measured.isPresent() || planned.isPresent() ? Numbers.plain(through + air, 2) + " ms" : "-";
    return new Row(Standings.sign(standing), name, figure, segments, measured, limitAt());
  }

  private static void addAir(List<Segment> segments, double from, double air) {
    if (air > 1e-3) {
      segments.add(new Segment(Part.AIR, from, from + air));
    }
  }

  /** The latest that the electronics may be through for the path to keep its limit. */
  private OptionalDouble limitAt() {
    OptionalDouble limit = limitMs();
    OptionalDouble planned = electronicsMs();
    if (limit.isEmpty() || planned.isEmpty()) {
      return OptionalDouble.empty();
    }
    double judged = budget.orElseThrow().judgedMs().doubleValue();
    return OptionalDouble.of(planned.getAsDouble() - judged + limit.getAsDouble());
  }
}
