package dev.loopgauge.screen.state;

import dev.loopgauge.report.budget.MixRecord;
import dev.loopgauge.report.budget.MixRecord.OutcomeRecord;
import dev.loopgauge.report.budget.MixRecord.PairRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.planned.AlignmentDocument;
import dev.loopgauge.screen.state.ScreenState.MixState;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What is heard together, in words, as predicted. */
final class Mixing {
  private static final int MOST_PAIRS = 6;

  private Mixing() {}

  /** Each mix, with what to delay in it where that was worked out. */
  static List<MixState> of(List<MixRecord> mixes, Optional<AlignmentDocument> alignment) {
    return mixes.stream()
        .map(
            mix ->
                new MixState(
                    mix.name(),
                    mix.pairs().stream().limit(MOST_PAIRS).map(Mixing::told).toList(),
                    advice(mix.name(), alignment)))
        .toList();
  }

  private static String told(PairRecord pair) {
    OutcomeRecord known = pair.outcomes().get(0);
    String where = pair.position().map(position -> " at " + position).orElse("");
    return "%s comes %s after %s%s: %s. %s"
        .formatted(
            pair.paths().get(1),
            Numbers.inMs(known.secondLaterMs(), 2),
            pair.paths().get(0),
            where,
            known
                .firstNullHz()
                .map(
                    hz -> "first null of the comb at " + Numbers.brief(hz.doubleValue(), 0) + " Hz")
                .orElse("no comb"),
            sentence(known.effect().name().toLowerCase(Locale.ROOT) + ", " + known.reason()));
  }

  private static String sentence(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1) + ".";
  }

  private static List<String> advice(String name, Optional<AlignmentDocument> alignment) {
    List<String> advice = new ArrayList<>();
    alignment.stream()
        .flatMap(document -> document.mixes().stream())
        .filter(mix -> mix.name().equals(name))
        .flatMap(mix -> mix.paths().stream())
        .filter(path -> path.addMs().signum() > 0)
        .forEach(
            path ->
                advice.add(
                    "To meet, delay %s by %s (%s samples)."
                        .formatted(
                            path.path(),
                            Numbers.inMs(path.addMs(), 2),
                            Numbers.brief(path.addSamples().doubleValue(), 0))));
    boolean left =
        alignment.isPresent()
            && alignment.get().mixes().stream()
                .filter(mix -> mix.name().equals(name))
                .anyMatch(mix -> mix.paths().size() > 1);
    if (advice.isEmpty() && left) {
      advice.add("To meet, a performer would have to hear later: see `align --may-delay`.");
    }
    return advice;
  }
}
