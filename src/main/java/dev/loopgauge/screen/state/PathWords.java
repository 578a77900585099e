package dev.loopgauge.screen.state;

import dev.loopgauge.report.budget.PathRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.screen.state.ScreenState.PathState;
import dev.loopgauge.verify.verdict.Judgement;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** How a path stands, by what was measured where it was, and by its listener's limit. */
final class PathWords {
  private PathWords() {}

  /** A path that was not measured: its prediction is no verdict. */
  static PathState unmeasured(
      PathRecord path, Forecast forecast, Optional<PastState> past, Optional<String> moved) {
    return new PathState(
        path.name(),
        listener(path),
        moved.isPresent() ? Judgement.BAD : Judgement.NOT_JUDGED,
        moved.orElse("not measured"),
        forecast,
        Optional.empty(),
        past,
        moved);
  }

  /**
   * A path that was measured.
   *
   * @param moved what happened to it since, which counts more
   */
  static PathState measured(
      PathRecord path,
      Forecast forecast,
      Taken taken,
      Optional<String> outdated,
      Optional<PastState> past,
      Optional<String> moved) {
    MeasurementDocument document = taken.document();
    Optional<BigDecimal> beyond = beyond(document, forecast);
    Judgement standing =
        moved.isPresent()
            ? Judgement.BAD
            : Judgement.worst(List.of(heard(document), limit(beyond)));
    String word = document.line().contains(": ") ? lead(document.line()) : document.line();
    return new PathState(
        path.name(),
        listener(path),
        standing,
        moved.orElse(
            beyond.map(ms -> word + ", OVER its limit by " + Numbers.inMs(ms, 2)).orElse(word)),
        forecast,
        Optional.of(ReadingState.of(taken, forecast, outdated)),
        past,
        moved);
  }

  private static String lead(String line) {
    return line.substring(0, line.indexOf(": "));
  }

  private static Judgement heard(MeasurementDocument document) {
    return document.measurement().isEmpty()
        ? Judgement.UNDECIDED
        : document.verdict().flatMap(v -> v.standing()).orElse(Judgement.NOT_JUDGED);
  }

  private static Optional<BigDecimal> beyond(MeasurementDocument document, Forecast forecast) {
    return document.comparison().flatMap(c -> forecast.beyond(ReadingState.laterMs(c)));
  }

  private static Judgement limit(Optional<BigDecimal> beyond) {
    return beyond.isPresent() ? Judgement.BAD : Judgement.NOT_JUDGED;
  }

  private static String listener(PathRecord path) {
    return path.listener().map(listener -> listener.label()).orElse("?");
  }
}
