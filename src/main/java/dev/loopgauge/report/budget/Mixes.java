package dev.loopgauge.report.budget;

import dev.loopgauge.plan.MixArrival;
import dev.loopgauge.plan.MixBudget;
import dev.loopgauge.plan.MixOutcome;
import dev.loopgauge.plan.MixPair;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Paths that are heard together, in words. */
final class Mixes {
  private final Sheet sheet;

  private Mixes(Sheet sheet) {
    this.sheet = sheet;
  }

  /** Tells how each two paths of the mix meet, and what the desk adds to them. */
  static void tell(MixBudget mix, Sheet sheet) {
    Mixes mixes = new Mixes(sheet);
    sheet.line("Heard together, " + mix.name() + ":");
    mixes.pairs(mix.pairs());
    mixes.reasons(mix.pairs());
    mix.pairs().stream().filter(pair -> !pair.unknown().isEmpty()).forEach(mixes::unknown);
    mix.arrivals().forEach(mixes::desk);
    sheet.gap();
  }

  private void pairs(List<MixPair> pairs) {
    new Table<MixPair>()
        .words("first", Mixes::first)
        .words("then", Mixes::second)
        .figures("ms later", pair -> ms(known(pair).overlap().delayMs()))
        .figures("first null", pair -> Combs.hz(known(pair).overlap().comb().firstNullHz()))
        .figures("then every", pair -> Combs.hz(known(pair).overlap().comb().nullSpacingHz()))
        .figures("ripple", pair -> Combs.ripple(known(pair).overlap().comb()))
        .words("", Mixes::effects)
        .lines(pairs)
        .forEach(sheet::asIs);
  }

  /** As if the desk compensated none of the unknown stages. */
  private static MixOutcome known(MixPair pair) {
    return pair.outcomes().get(0);
  }

  private static String first(MixPair pair) {
    return pair.first().path();
  }

  private static String second(MixPair pair) {
    return pair.second().path();
  }

  private static String effects(MixPair pair) {
    return pair.outcomes().stream()
        .map(outcome -> Combs.effect(outcome.overlap().effect()))
        .distinct()
        .collect(Collectors.joining(" or "));
  }

  private void reasons(List<MixPair> pairs) {
    Map<String, String> effects = new LinkedHashMap<>();
    pairs.stream()
        .flatMap(pair -> pair.outcomes().stream())
        .map(MixOutcome::overlap)
        .forEach(overlap -> effects.put(overlap.reason(), Combs.effect(overlap.effect())));
    effects.forEach((reason, effect) -> sheet.row(effect, reason));
  }

  private void unknown(MixPair pair) {
    sheet.row(
        "unknown",
        "does the desk compensate "
            + (String.join(", ", pair.unknown()) + "? " + second(pair) + " is later than ")
            + (first(pair) + " by " + each(pair, outcome -> heard(pair, outcome))));
    sheet.row(
        "  settle",
        "measure both with the whole mix switched in; the reading of "
            + (second(pair) + " less that of " + first(pair) + " is ")
            + each(pair, outcome -> read(pair, outcome)));
  }

  private static String each(MixPair pair, Function<MixOutcome, String> words) {
    return pair.outcomes().stream().map(words).collect(Collectors.joining("; ", "", "."));
  }

  private static String heard(MixPair pair, MixOutcome outcome) {
    return ms(outcome.secondLater().ms())
        + (" ms" + condition(pair, outcome) + ": " + Combs.effect(outcome.overlap().effect()));
  }

  private static String read(MixPair pair, MixOutcome outcome) {
    return ms(outcome.loopSecondLater().ms()) + " ms" + condition(pair, outcome);
  }

  private static String condition(MixPair pair, MixOutcome outcome) {
    if (outcome.compensated().isEmpty()) {
      return " if not";
    }
    return pair.unknown().size() == 1
        ? " if so"
        : " with " + String.join(" and ", outcome.compensated());
  }

  private void desk(MixArrival arrival) {
    if (arrival.addedIfAll().samples() > 0) {
      boolean sure = arrival.added().equals(arrival.addedIfAll());
      sheet.row(
          "desk",
          (sure ? "delays " : "may delay ")
              + (arrival.path().name() + " by " + ms(arrival.addedIfAll().ms()))
              + (" ms to match: " + ms(arrival.delayIfAll().ms()) + " ms in all, ")
              + (Standings.of(arrival.path().limits(), arrival.delayIfAll()) + "."));
    }
  }

  private static String ms(double ms) {
    return Numbers.plain(ms, 3);
  }
}
