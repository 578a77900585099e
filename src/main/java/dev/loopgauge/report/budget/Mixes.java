package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Standing;
import dev.loopgauge.report.budget.MixRecord.ArrivalRecord;
import dev.loopgauge.report.budget.MixRecord.OutcomeRecord;
import dev.loopgauge.report.budget.MixRecord.PairRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Paths that are heard together, in words. */
final class Mixes {
  private final Sheet sheet;
  private final List<PathRecord> paths;

  private Mixes(Sheet sheet, List<PathRecord> paths) {
    this.sheet = sheet;
    this.paths = paths;
  }

  /**
   * Tells how each two paths of the mix meet, and what the desk adds to them.
   *
   * @param paths the budgets of its paths
   */
  static void tell(MixRecord mix, List<PathRecord> paths, Sheet sheet) {
    Mixes mixes = new Mixes(sheet, paths);
    sheet.line("Heard together, " + mix.name() + ":");
    if (!mix.pairs().isEmpty()) {
      mixes.pairs(mix.pairs());
      mixes.reasons(mix.pairs());
    }
    mix.pairsLeftOut()
        .ifPresent(
            pairs ->
                sheet.row(
                    "left out", pairs + " pairs: alike, or not with the first that is heard"));
    mix.pairs().stream().filter(p -> !p.unknownStages().isEmpty()).forEach(mixes::unknown);
    mix.paths().forEach(mixes::desk);
    sheet.gap();
  }

  private void pairs(List<PairRecord> pairs) {
    new Table<PairRecord>()
        .words("first", Mixes::first)
        .words("then", Mixes::then)
        .figures("ms later", pair -> ms(pair.known().secondLaterMs().abs()))
        .figures("first null", pair -> Combs.hz(pair.known().firstNullHz()))
        .figures("then every", pair -> Combs.hz(pair.known().nullSpacingHz()))
        .figures("ripple", pair -> Combs.ripple(pair.known().rippleDb()))
        .words("", Mixes::effects)
        .lines(pairs)
        .forEach(sheet::asIs);
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

  private void unknown(PairRecord pair) {
    sheet.row(
        "unknown",
        "does the desk compensate "
            + (String.join(", ", pair.unknownStages()) + "? " + second(pair) + " is later than ")
            + (first(pair) + " by " + each(pair, outcome -> heard(pair, outcome))));
    sheet.row(
        "  settle",
        "measure both with the whole mix switched in; the reading of "
            + (second(pair) + " less that of " + first(pair) + " is ")
            + each(pair, outcome -> read(pair, outcome)));
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

  private void desk(ArrivalRecord arrival) {
    boolean sure = arrival.delayIfAllCompensatedMs().isEmpty();
    BigDecimal most = arrival.delayIfAllCompensatedMs().orElse(arrival.delayMs());
    BigDecimal added = most.subtract(arrival.delayMs()).add(arrival.addedByDeskMs());
    if (added.signum() > 0) {
      sheet.row(
          "desk",
          (sure ? "delays " : "may delay ")
              + (arrival.path() + " by " + ms(added) + " ms to match: " + ms(most))
              + (" ms in all, " + standing(arrival) + "."));
    }
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
