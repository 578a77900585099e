package dev.loopgauge.screen.state;

import dev.loopgauge.report.budget.PathRecord;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.watch.Happening;
import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.report.watch.WatchRow;
import dev.loopgauge.verify.verdict.Judgement;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the screen shows of a watch.
 *
 * @param on whether it goes on
 * @param told what is watched, and at the end what it came to
 * @param lines the same path by path, once it is over
 * @param sinceMs when it began, in ms since 1970
 * @param lookedMs when the paths were last looked at; null before the first look
 * @param paths how each path is doing, while it goes on
 * @param events what happened, the last one first
 * @param note something else to know; null where there is nothing
 */
public record WatchState(
    boolean on,
    String told,
    List<String> lines,
    long sinceMs,
    Optional<Long> lookedMs,
    List<WatchedPath> paths,
    List<WatchedEvent> events,
    Optional<String> note) {
  private static final int MS_DECIMALS = 2;
  private static final int SAMPLE_DECIMALS = 2;

  /**
   * How a path is doing.
   *
   * @param standing bad where something moved or its listener's limit is passed
   * @param ms the delay that is read now; null where none is
   * @param samples the same in samples
   * @param word the same in words, or why none is read and how long ago one was
   * @param event what happened to it last; null where nothing did
   */
  public record WatchedPath(
      String name,
      Judgement standing,
      Optional<String> ms,
      Optional<String> samples,
      String word,
      Optional<String> event) {}

  /**
   * What happened.
   *
   * @param starts whether it starts; it ends otherwise
   * @param causes what may have caused it and what to check, the likely one first
   */
  public record WatchedEvent(
      String clock, String path, boolean starts, String text, List<String> causes) {}

  /**
   * Of what was heard.
   *
   * @param forecasts by the names of the paths
   * @param budget the same paths as they are predicted
   */
  static WatchState of(WatchSeen seen, List<PathRecord> budget, Map<String, Forecast> forecasts) {
    return new WatchState(
        seen.on(),
        seen.told().get(0),
        seen.told().subList(1, seen.told().size()).stream().map(String::strip).toList(),
        seen.since().toEpochMilli(),
        seen.looked().map(Instant::toEpochMilli),
        seen.states().stream()
            .filter(state -> forecasts.containsKey(state.path().orElse("")))
            .map(state -> path(seen, state, budget, forecasts))
            .toList(),
        seen.events().stream().map(WatchState::event).toList(),
        seen.note());
  }

  private static WatchedPath path(
      WatchSeen seen, WatchLine state, List<PathRecord> budget, Map<String, Forecast> forecasts) {
    String name = state.path().orElseThrow();
    Optional<ShownDelay> read = state.read().shown();
    Optional<Double> later =
        read.flatMap(delay -> predictedMs(name, budget).map(ms -> delay.ms() - ms));
    Forecast forecast = forecasts.get(name);
    boolean moved = seen.movedSince(name, seen.since()).isPresent();
    boolean over = later.flatMap(forecast::beyond).isPresent();
    String limit = later.flatMap(forecast::told).map(told -> ", " + told).orElse("");
    return new WatchedPath(
        name,
        moved || over ? Judgement.BAD : read.isPresent() ? Judgement.GOOD : Judgement.NOT_JUDGED,
        read.map(delay -> Numbers.plain(delay.ms(), MS_DECIMALS)),
        read.map(delay -> Numbers.plain(delay.samples(), SAMPLE_DECIMALS)),
        read.isEmpty() ? WatchRow.words(state) : (moved ? "moved" : "steady") + limit,
        seen.events().stream()
            .filter(event -> event.path().equals(state.path()))
            .findFirst()
            .map(WatchSeen::brief));
  }

  /** What a cable carries of it. */
  private static Optional<Double> predictedMs(String name, List<PathRecord> budget) {
    return budget.stream()
        .filter(path -> path.name().equals(name))
        .findFirst()
        .flatMap(PathRecord::loopMs)
        .map(Number::doubleValue);
  }

  private static WatchedEvent event(WatchLine event) {
    return new WatchedEvent(
        event.clock(),
        event.path().orElse(""),
        event.starts(),
        event.what().text().orElse(""),
        event.what().causes().stream().map(Happening.Cause::text).toList());
  }
}
