package dev.loopgauge.screen.state;

import dev.loopgauge.plan.Blend;
import dev.loopgauge.plan.Overlap;
import dev.loopgauge.report.budget.MixRecord;
import dev.loopgauge.report.budget.MixRecord.OutcomeRecord;
import dev.loopgauge.report.budget.MixRecord.PairRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.planned.AlignmentDocument;
import dev.loopgauge.report.planned.AlignmentDocument.AlignedRecord;
import dev.loopgauge.screen.state.ScreenState.Meeting;
import dev.loopgauge.screen.state.ScreenState.MixState;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is heard together, in words: as predicted, and as measured where any of it was.
 *
 * @param rate what tolerances count samples of
 * @param measured the paths that were measured, by their names
 * @param alignment what to delay, where that was worked out
 */
record Mixing(
    SampleRate rate, Map<String, MeasuredDelay> measured, Optional<AlignmentDocument> alignment) {
  private static final int MOST_PAIRS = 6;

  /** Each mix, with what to delay in it. */
  List<MixState> of(List<MixRecord> mixes) {
    return mixes.stream()
        .map(
            mix ->
                new MixState(
                    mix.name(),
                    mix.pairs().stream().limit(MOST_PAIRS).map(this::meeting).toList(),
                    advice(mix.name())))
        .toList();
  }

  private Meeting meeting(PairRecord pair) {
    OutcomeRecord known = pair.outcomes().get(0);
    return new Meeting(
        told(
            pair,
            known.secondLaterMs().doubleValue(),
            known.firstNullHz().map(BigDecimal::doubleValue),
            known.effect(),
            known.reason()),
        measured(pair, known));
  }

  /** With what was measured in place of what was predicted, where it was. */
  private Optional<String> measured(PairRecord pair, OutcomeRecord known) {
    List<String> paths = pair.paths().stream().filter(measured::containsKey).toList();
    if (paths.isEmpty()) {
      return Optional.empty();
    }
    boolean all = paths.size() == pair.paths().size();
    double apart =
        known.secondLaterMs().doubleValue()
            + laterMs(pair.paths().get(1))
            - laterMs(pair.paths().get(0));
    double tolerance =
        paths.stream().mapToDouble(path -> measured.get(path).uncertaintyMs()).sum()
            + (all ? 0 : toleranceMs(pair));
    double level = known.laterLevelDb().map(BigDecimal::doubleValue).orElse(0.0);
    Overlap overlap = new Overlap(Math.abs(apart), tolerance, apart < 0 ? -level : level);
    OptionalDouble hz = overlap.comb().firstNullHz();
    String how = all ? "As measured: " : "With " + paths.get(0) + " as measured: ";
    return Optional.of(
        how
            + told(
                pair,
                apart,
                hz.isPresent() ? Optional.of(hz.getAsDouble()) : Optional.empty(),
                overlap.effect(),
                overlap.reason()));
  }

  private double laterMs(String path) {
    return Optional.ofNullable(measured.get(path)).map(MeasuredDelay::laterMs).orElse(0.0);
  }

  private double toleranceMs(PairRecord pair) {
    double samples = pair.toleranceSamples().map(BigDecimal::doubleValue).orElse(0.0);
    return new Latency(samples, rate).ms();
  }

  private static String told(
      PairRecord pair, double apartMs, Optional<Double> nullHz, Blend effect, String reason) {
    int later = apartMs < 0 ? 0 : 1;
    return "%s comes %s after %s%s: %s. %s"
        .formatted(
            pair.paths().get(later),
            Numbers.plain(Math.abs(apartMs), 2) + " ms",
            pair.paths().get(1 - later),
            pair.position().map(position -> " at " + position).orElse(""),
            nullHz
                .map(hz -> "first null of the comb at " + Numbers.brief(hz, 0) + " Hz")
                .orElse("no comb"),
            sentence(effect.label() + ", " + reason));
  }

  private static String sentence(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1) + ".";
  }

  private List<String> advice(String name) {
    List<AlignedRecord> paths =
        alignment.stream()
            .flatMap(document -> document.mixes().stream())
            .filter(mix -> mix.name().equals(name))
            .flatMap(mix -> mix.paths().stream())
            .toList();
    List<String> advice = new ArrayList<>();
    paths.stream()
        .filter(path -> path.addMs().signum() > 0)
        .forEach(path -> advice.add(delay(path)));
    if (advice.isEmpty() && paths.size() > 1) {
      advice.add("To meet, a performer would have to hear later: see `align --may-delay`.");
    }
    paths.stream()
        .filter(path -> path.outsideBudget().orElse(false))
        .forEach(
            path ->
                advice.add(
                    path.path() + " is outside its budget: find out why before you set delays."));
    return advice;
  }

  private String delay(AlignedRecord path) {
    return "To meet, delay %s by %s (%s samples), %s."
        .formatted(
            path.path(),
            Numbers.inMs(path.addMs(), 2),
            Numbers.brief(path.addSamples().doubleValue(), 0),
            measured.isEmpty() ? "as predicted" : "with what was measured");
  }
}
