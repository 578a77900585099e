package dev.loopgauge.report.watch;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.verify.watch.PathStatus;
import java.util.Optional;

/** A path on the screen: the delay that is read now, or that none is and for how long. */
public final class WatchRow {
  private static final int PATH_COLUMNS = 18;
  private static final int COLUMNS = 79;

  private WatchRow() {}

  /** The heading above the rows. */
  public static String heading() {
    return row("path", "delay", "", "state");
  }

  /**
   * A row of a table.
   *
   * @param state the path's state
   * @param event its last event, where it had one
   */
  public static String of(WatchLine state, Optional<WatchLine> event) {
    Optional<ShownDelay> shown = state.read().shown();
    return row(
        OneLine.brief(state.path().orElse(""), PATH_COLUMNS),
        shown.map(delay -> Numbers.plain(delay.ms(), 2) + " ms").orElse("-"),
        shown.map(delay -> Numbers.plain(delay.samples(), 2) + " smp").orElse(""),
        shown.isPresent() ? event.map(WatchLine::brief).orElse("steady") : words(state));
  }

  /** A line of its own, with its time. */
  public static String line(WatchLine state) {
    return state.clock()
        + "  "
        + state.path().orElse("")
        + "  "
        + state
            .read()
            .shown()
            .map(
                delay ->
                    Numbers.plain(delay.ms(), 2)
                        + " ms, "
                        + Numbers.plain(delay.samples(), 2)
                        + " samples")
            .orElseGet(() -> words(state));
  }

  /** Why nothing is read now, and since when. */
  public static String words(WatchLine state) {
    String why = why(state.state().orElseThrow());
    return why
        + state
            .ageSeconds()
            .map(age -> ", last read " + age(age.doubleValue()) + " ago")
            .orElse(", not read yet");
  }

  private static String why(PathStatus.State state) {
    return switch (state) {
      case READ -> "read";
      case NO_PROGRAMME -> "nothing plays";
      case NOT_ENOUGH -> "no reading";
      case LOST_SOUND -> "SOUND LOST";
      case NO_REFERENCE -> "NO REFERENCE";
      case CLIPPED -> "CLIPPED";
      case INTERRUPTED -> "recording gap";
    };
  }

  private static String age(double seconds) {
    long whole = Math.round(seconds);
    return whole < 120 ? whole + " s" : whole / 60 + " min";
  }

  private static String row(String path, String ms, String samples, String words) {
    String row = "  %-18s %9s %12s  %s".formatted(path, ms, samples, words).stripTrailing();
    return row.length() > COLUMNS ? row.substring(0, COLUMNS - 3) + "..." : row;
  }
}
