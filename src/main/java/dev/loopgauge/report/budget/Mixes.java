package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Standing;
import dev.loopgauge.plan.Blend;
import dev.loopgauge.report.budget.MixRecord.ArrivalRecord;
import dev.loopgauge.report.budget.MixRecord.OutcomeRecord;
import dev.loopgauge.report.budget.MixRecord.PairRecord;
import dev.loopgauge.report.form.Alike;
import dev.loopgauge.report.form.Excerpt;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Paths that are heard together, in words. */
final class Mixes {
  private static final int MOST_PAIRS = 12;
  private static final int MOST_UNKNOWN = 4;
  private static final int MOST_DELAYED = 6;

  private final MixRecord mix;
  private final List<PathRecord> paths;
  private final Excerpt excerpt;
  private final Sheet sheet;

  private Mixes(MixRecord mix, List<PathRecord> paths, Excerpt excerpt, Sheet sheet) {
    this.mix = mix;
    this.paths = paths;
    this.excerpt = excerpt;
    this.sheet = sheet;
  }

  /**
   * Tells how each two paths of the mix meet, and what the desk adds to them.
   *
   * @param paths the budgets of its paths
   */
  static void tell(MixRecord mix, List<PathRecord> paths, Excerpt excerpt, Sheet sheet) {
    new Mixes(mix, paths, excerpt, sheet).tell();
  }

  private void tell() {
    Excerpt.Part<PairRecord> part = excerpt.of(mix.pairs(), MOST_PAIRS, Mixes::key, worstFirst());
    boolean inPart = part.isGrouped() || part.hidden() > 0;
    sheet.line("Heard together, " + mix.name() + ":" + (inPart ? " " + counts() : ""));
    if (!mix.pairs().isEmpty()) {
      pairs(part);
      reasons(part.shown().stream().map(Alike::first).toList());
    }
    mix.pairsLeftOut()
        .ifPresent(
            pairs ->
                sheet.row(
                    "left out", pairs + " pairs: alike, or not with the first that is heard"));
    unknown();
    desk();
    sheet.gap();
  }

  private static Object key(PairRecord pair) {
    OutcomeRecord known = pair.known();
    return List.of(
        pair.position(),
        known.secondLaterMs().abs(),
        known.rippleDb(),
        effects(pair),
        pair.unknownStages());
  }

  private static Comparator<PairRecord> worstFirst() {
    return Comparator.comparing(Mixes::worst).reversed();
  }

  private static Blend worst(PairRecord pair) {
    return pair.outcomes().stream()
        .map(OutcomeRecord::effect)
        .max(Comparator.naturalOrder())
        .orElse(Blend.SAFE);
  }

  private String counts() {
    Map<String, Long> effects =
        mix.pairs().stream()
            .sorted(worstFirst())
            .collect(
                Collectors.groupingBy(Mixes::effects, LinkedHashMap::new, Collectors.counting()));
    return effects.entrySet().stream()
        .map(effect -> effect.getValue() + " " + effect.getKey())
        .collect(Collectors.joining(", ", mix.pairs().size() + " pairs carry one input: ", "."));
  }

  private void pairs(Excerpt.Part<PairRecord> part) {
    Table<Alike<PairRecord>> table =
        new Table<Alike<PairRecord>>()
            .words("first", pair -> first(pair.first()))
            .words("then", pair -> then(pair.first()));
    if (part.isGrouped()) {
      table.figures("alike", Alike::more);
    }
    table
        .figures("ms later", pair -> ms(pair.first().known().secondLaterMs().abs()))
        .figures("first null", pair -> Combs.hz(pair.first().known().firstNullHz()))
        .figures("then every", pair -> Combs.hz(pair.first().known().nullSpacingHz()))
        .ifRoom()
        .figures("ripple", pair -> Combs.ripple(pair.first().known().rippleDb()))
        .words("", pair -> effects(pair.first()))
        .lines(part.shown())
        .forEach(sheet::asIs);
    if (part.hidden() > 0) {
      sheet.line("  and " + part.hidden() + " pairs more");
    }
  }

  private static String first(PairRecord pair) {
    return pair.paths().get(0);
  }

  private static String second(PairRecord pair) {
    return pair.paths().get(1);
  }

  /** The second, and the position where both are heard. */
  private static String then(PairRecord pair) {
    return second(pair) + pair.position().map(position -> " at " + position).orElse("");
  }

  private static String effects(PairRecord pair) {
    return pair.outcomes().stream()
        .map(outcome -> Combs.effect(outcome.effect()))
        .distinct()
        .collect(Collectors.joining(" or "));
  }

  private void reasons(List<PairRecord> pairs) {
    Map<String, String> effects = new LinkedHashMap<>();
    pairs.stream()
        .flatMap(pair -> pair.outcomes().stream())
        .forEach(outcome -> effects.put(outcome.reason(), Combs.effect(outcome.effect())));
    effects.forEach((reason, effect) -> sheet.row(effect, reason));
  }

  /** What to settle of two paths; the same at each position that hears both. */
  private record Question(String unknown, String settle) {
    static Question of(PairRecord pair) {
      return new Question(
          "does the desk compensate "
              + (String.join(", ", pair.unknownStages()) + "? " + second(pair) + " is later than ")
              + (first(pair) + " by " + each(pair, outcome -> heard(pair, outcome))),
          "measure both with the whole mix switched in; the reading of "
              + (second(pair) + " less that of " + first(pair) + " is ")
              + each(pair, outcome -> read(pair, outcome)));
    }
  }

  private void unknown() {
    List<Question> open =
        mix.pairs().stream()
            .filter(pair -> !pair.unknownStages().isEmpty())
            .map(Question::of)
            .distinct()
            .toList();
    Excerpt.Part<Question> part = excerpt.of(open, MOST_UNKNOWN, Function.identity());
    part.shown()
        .forEach(
            row ->
                sheet.row("unknown", row.first().unknown()).row("  settle", row.first().settle()));
    if (part.hidden() > 0) {
      sheet.row("unknown", "the same of " + part.hidden() + " pairs more");
    }
  }

  private static String each(PairRecord pair, Function<OutcomeRecord, String> words) {
    return pair.outcomes().stream().map(words).collect(Collectors.joining("; ", "", "."));
  }

  private static String heard(PairRecord pair, OutcomeRecord outcome) {
    return ms(outcome.secondLaterMs())
        + (" ms" + condition(pair, outcome) + ": " + Combs.effect(outcome.effect()));
  }

  private static String read(PairRecord pair, OutcomeRecord outcome) {
    return ms(outcome.loopSecondLaterMs()) + " ms" + condition(pair, outcome);
  }

  private static String condition(PairRecord pair, OutcomeRecord outcome) {
    if (outcome.compensated().isEmpty()) {
      return " if not";
    }
    return pair.unknownStages().size() == 1
        ? " if so"
        : " with " + String.join(" and ", outcome.compensated());
  }

  private void desk() {
    List<ArrivalRecord> delayed =
        mix.paths().stream().filter(arrival -> added(arrival).signum() > 0).toList();
    Excerpt.Part<ArrivalRecord> part =
        excerpt.of(
            delayed, MOST_DELAYED, this::desk, Comparator.comparing(Mixes::added).reversed());
    part.shown()
        .forEach(
            row ->
                sheet.row(
                    "desk",
                    (isSure(row.first()) ? "delays " : "may delay ")
                        + (row.names(ArrivalRecord::path) + " " + desk(row.first()))));
    if (part.hidden() > 0) {
      sheet.row("desk", "delays " + part.hidden() + " paths more");
    }
  }

  private static boolean isSure(ArrivalRecord arrival) {
    return arrival.delayIfAllCompensatedMs().isEmpty();
  }

  private static BigDecimal most(ArrivalRecord arrival) {
    return arrival.delayIfAllCompensatedMs().orElse(arrival.delayMs());
  }

  private static BigDecimal added(ArrivalRecord arrival) {
    return most(arrival).subtract(arrival.delayMs()).add(arrival.addedByDeskMs());
  }

  private String desk(ArrivalRecord arrival) {
    return "by "
        + (ms(added(arrival)) + " ms to match: " + ms(most(arrival)))
        + (" ms in all, " + standing(arrival) + ".");
  }

  private String standing(ArrivalRecord arrival) {
    Optional<Standing> standing = arrival.standingIfAllCompensated().or(arrival::standing);
    return paths.stream()
        .filter(path -> path.name().equals(arrival.path()))
        .findFirst()
        .flatMap(path -> standing.map(s -> path.inWords(s, arrival.limitedIfAllMs())))
        .orElse("?");
  }

  private static String ms(BigDecimal ms) {
    return Numbers.plain(ms.doubleValue(), 3);
  }
}
