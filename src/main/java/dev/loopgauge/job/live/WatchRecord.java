package dev.loopgauge.job.live;

import dev.loopgauge.capture.LostFrames;
import dev.loopgauge.estimate.LiveTracker;
import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.job.WatchListener;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.VerdictRecord;
import dev.loopgauge.report.form.Written;
import dev.loopgauge.report.watch.Happening;
import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.report.watch.WatchSummary;
import dev.loopgauge.report.watch.WatchedDelay;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.verdict.OverallVerdict;
import dev.loopgauge.verify.watch.PathStatus;
import dev.loopgauge.verify.watch.PathWatch;
import dev.loopgauge.verify.watch.WatchEvent;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** What a watch has come to so far: it makes lines of windows and events, and hands them on. */
final class WatchRecord {
  private static final DateTimeFormatter ISO =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSxxx");

  /** One path. */
  private static final class Path {
    final String name;
    final PathWatch watch;
    final WatchTelling telling;
    int windows;
    int read;
    int events;
    Optional<BigDecimal> first = Optional.empty();
    Optional<BigDecimal> last = Optional.empty();

    Path(String name, PathWatch watch, WatchTelling telling) {
      this.name = name;
      this.watch = watch;
      this.telling = telling;
    }
  }

  private final ZonedDateTime begun;
  private final WatchListener listener;
  private final Consumer<WatchLine> events;
  private final List<Path> paths = new ArrayList<>();
  private double heardSeconds;
  private double firstFrom;
  private double lastFrom;
  private int looks;
  private boolean moved;

  /**
   * Nothing was heard yet.
   *
   * @param begun when the watch began
   * @param listener learns of states
   * @param events is given each event
   */
  WatchRecord(ZonedDateTime begun, WatchListener listener, Consumer<WatchLine> events) {
    this.begun = begun;
    this.listener = listener;
    this.events = events;
  }

  /** Watches a path from now on. */
  void add(String name, SampleRate rate, double windowSeconds, WatchTelling telling) {
    paths.add(new Path(name, new PathWatch(rate, windowSeconds), telling));
  }

  /** So much sound was heard. */
  void heard(double seconds) {
    heardSeconds = seconds;
  }

  /** The recording lost frames. */
  void lost(LostFrames lost) {
    listener.notes(clock(heardSeconds) + "  the recording has a gap: " + lost.text());
  }

  /** No sound comes any more. */
  void fails(String why) {
    listener.notes(clock(heardSeconds) + "  NO SOUND: " + why + " Trying again until it is back.");
  }

  /** No sound came up to a time: what was read last is not read now. */
  void waits(double atSeconds) {
    heard(atSeconds);
    listener.states(paths.stream().map(path -> silent(path, atSeconds)).toList());
  }

  /** Sound comes again. */
  void goesOn(double atSeconds, double afterSeconds) {
    heard(atSeconds);
    listener.notes("%s  The sound is back after %.0f s.".formatted(clock(atSeconds), afterSeconds));
  }

  /** Takes a window of each path. */
  void take(List<WindowReading> readings, LiveTracker sound) {
    List<WatchLine> states = new ArrayList<>();
    lastFrom = readings.get(0).fromSeconds();
    firstFrom = looks == 0 ? lastFrom : firstFrom;
    looks++;
    for (int i = 0; i < readings.size(); i++) {
      int place = i;
      Path path = paths.get(i);
      WindowReading window = readings.get(i);
      path.windows++;
      window.delay().ifPresent(read -> count(path, read));
      List<WatchEvent> events =
          path.watch.next(
              window,
              (earliest, latest, before, after) ->
                  sound.changed(place, earliest, latest, before, after));
      events.forEach(event -> tell(path, event));
      states.add(state(path, window));
    }
    listener.states(states);
  }

  private static void count(Path path, FollowedDelay read) {
    BigDecimal samples =
        Written.samples(read.point().delay().samples(), read.point().uncertaintySamples());
    path.read++;
    path.first = path.first.or(() -> Optional.of(samples));
    path.last = Optional.of(samples);
  }

  /** Tells what was still to be told. */
  void finish() {
    for (Path path : paths) {
      path.watch.finish().forEach(event -> tell(path, event));
    }
  }

  private void tell(Path path, WatchEvent event) {
    moved = true;
    path.events += event.phase() == WatchEvent.Phase.STARTS ? 1 : 0;
    WatchTelling.Told told = path.telling.of(event);
    OverallVerdict verdict = new OverallVerdict(List.of(told.verdict()));
    Optional<FollowedDelay> now = path.watch.status().flatMap(PathStatus::current);
    WatchLine line =
        new WatchLine(
            "watch",
            now.isPresent() ? Outcome.MEASURED : Outcome.NOT_TRUSTWORTHY,
            told.event(),
            Optional.of(event.phase()),
            at(event.atSeconds()),
            seconds(event.atSeconds()),
            Optional.of(path.name),
            Optional.empty(),
            Optional.empty(),
            now.map(WatchedDelay::of).orElse(WatchedDelay.NONE),
            told.what(),
            Optional.of(VerdictRecord.of(verdict)),
            Optional.empty());
    events.accept(line);
  }

  private WatchLine state(Path path, WindowReading window) {
    PathStatus status = path.watch.status().orElseThrow();
    return state(path, window.toSeconds(), status.state(), status.current(), status.last());
  }

  private WatchLine silent(Path path, double atSeconds) {
    Optional<FollowedDelay> last = path.watch.status().flatMap(PathStatus::last);
    return state(path, atSeconds, PathStatus.State.INTERRUPTED, Optional.empty(), last);
  }

  private WatchLine state(
      Path path,
      double atSeconds,
      PathStatus.State state,
      Optional<FollowedDelay> current,
      Optional<FollowedDelay> last) {
    Optional<BigDecimal> age =
        current.isPresent()
            ? Optional.empty()
            : last.map(read -> Numbers.rounded(atSeconds - read.point().atSeconds(), 1));
    return new WatchLine(
        "watch",
        current.isPresent() ? Outcome.MEASURED : Outcome.NOT_TRUSTWORTHY,
        WatchLine.Event.STATE,
        Optional.empty(),
        at(atSeconds),
        seconds(atSeconds),
        Optional.of(path.name),
        Optional.of(state),
        age,
        current.map(WatchedDelay::of).orElse(WatchedDelay.NONE),
        Happening.NONE,
        Optional.empty(),
        Optional.empty());
  }

  /** Whether anything moved. */
  boolean hasMoved() {
    return moved;
  }

  /** Whether each path was read at some time. */
  boolean hasReadAll() {
    return paths.stream().allMatch(path -> path.read > 0);
  }

  /**
   * The whole of it.
   *
   * @param ended why it ended before its time, where it did
   */
  WatchSummary summary(long lostFrames, Optional<String> ended) {
    return new WatchSummary(
        "watch",
        hasReadAll() ? Outcome.MEASURED : Outcome.NOT_TRUSTWORTHY,
        WatchLine.Event.SUMMARY,
        at(heardSeconds),
        seconds(heardSeconds),
        moved,
        looks < 2 ? BigDecimal.ZERO : seconds((lastFrom - firstFrom) / (looks - 1)),
        paths.stream()
            .map(
                path ->
                    new WatchSummary.PathPart(
                        path.name, path.windows, path.read, path.first, path.last, path.events))
            .toList(),
        (int) Math.min(Integer.MAX_VALUE, lostFrames),
        ended);
  }

  private String at(double seconds) {
    return ISO.format(begun.plus(Duration.ofMillis(Math.round(1000 * seconds))));
  }

  private String clock(double seconds) {
    return at(seconds).substring(11, 19);
  }

  private static BigDecimal seconds(double seconds) {
    return Numbers.rounded(seconds, 3);
  }
}
