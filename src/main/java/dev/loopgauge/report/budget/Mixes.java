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
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.StringJoiner;
import java.util.function.Function;

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
      reasons(part.shown());
    }
    if (mix.pairsLeftOut().isPresent()) {
      String pairs = mix.pairsLeftOut().get() + " pairs";
      sheet.row("left out", pairs + ": alike, or not with the first that is heard");
    }
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
    return (one, other) -> worst(other).compareTo(worst(one));
  }

  private static Blend worst(PairRecord pair) {
    Blend worst = Blend.SAFE;
    for (OutcomeRecord outcome : pair.outcomes()) {
      worst = outcome.effect().compareTo(worst) > 0 ? outcome.effect() : worst;
    }
    return worst;
  }

  private String counts() {
    List<PairRecord> pairs = new ArrayList<>(mix.pairs());
    pairs.sort(worstFirst());
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (PairRecord pair : pairs) {
      counts.merge(effects(pair), 1, Integer::sum);
    }
    StringJoiner told = new StringJoiner(", ", pairs.size() + " pairs carry one input: ", ".");
    for (Map.Entry<String, Integer> count : counts.entrySet()) {
      told.add(count.getValue() + " " + count.getKey());
    }
    return told.toString();
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
        .tell(part.shown(), sheet);
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
    return pair.position().isPresent()
        ? second(pair) + " at " + pair.position().get()
        : second(pair);
  }

  private static String effects(PairRecord pair) {
    Set<String> effects = new LinkedHashSet<>();
    for (OutcomeRecord outcome : pair.outcomes()) {
      effects.add(Combs.effect(outcome.effect()));
    }
    return String.join(" or ", effects);
  }

  private void reasons(List<Alike<PairRecord>> pairs) {
    Map<String, String> effects = new LinkedHashMap<>();
    for (Alike<PairRecord> pair : pairs) {
      for (OutcomeRecord outcome : pair.first().outcomes()) {
        effects.put(outcome.reason(), Combs.effect(outcome.effect()));
      }
    }
    for (Map.Entry<String, String> effect : effects.entrySet()) {
      sheet.row(effect.getValue(), effect.getKey());
    }
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
    Map<String, Question> open = new LinkedHashMap<>();
    for (PairRecord pair : mix.pairs()) {
      if (!pair.unknownStages().isEmpty()) {
        Question question = Question.of(pair);
        open.putIfAbsent(question.unknown() + question.settle(), question);
      }
    }
    Excerpt.Part<Question> part =
        excerpt.of(List.copyOf(open.values()), MOST_UNKNOWN, Question::unknown);
    for (Alike<Question> row : part.shown()) {
      sheet.row("unknown", row.first().unknown()).row("  settle", row.first().settle());
    }
    if (part.hidden() > 0) {
      sheet.row("unknown", "the same of " + part.hidden() + " pairs more");
    }
  }

  private static String each(PairRecord pair, Function<OutcomeRecord, String> words) {
    List<String> each = new ArrayList<>();
    for (OutcomeRecord outcome : pair.outcomes()) {
      each.add(words.apply(outcome));
    }
    return String.join("; ", each) + ".";
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
    List<ArrivalRecord> delayed = new ArrayList<>();
    for (ArrivalRecord arrival : mix.paths()) {
      if (added(arrival).signum() > 0) {
        delayed.add(arrival);
      }
    }
    Excerpt.Part<ArrivalRecord> part =
        excerpt.of(
            delayed, MOST_DELAYED, this::desk, (one, other) -> added(other).compareTo(added(one)));
    for (Alike<ArrivalRecord> row : part.shown()) {
      String delays = isSure(row.first()) ? "delays " : "may delay ";
      sheet.row("desk", delays + row.names(ArrivalRecord::path) + " " + desk(row.first()));
    }
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
    Optional<Standing> standing =
        arrival.standingIfAllCompensated().isPresent()
            ? arrival.standingIfAllCompensated()
            : arrival.standing();
    for (PathRecord path : paths) {
      if (path.name().equals(arrival.path()) && standing.isPresent()) {
        return path.inWords(standing.get(), arrival.limitedIfAllMs());
      }
    }
    return "?";
  }

  private static String ms(BigDecimal ms) {
    return Numbers.plain(ms.doubleValue(), 3);
  }
}
