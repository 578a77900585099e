package dev.loopgauge.report.watch;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.OneLine;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.verify.watch.PathStatus;
import java.util.Optional;

/** A path's row on the screen: the delay that is read now, or that none is and for how long. */
public final class WatchRow {
  private static final int PATH_COLUMNS = 20;
  private static final int COLUMNS = 79;

  private WatchRow() {}

  /** The heading above the rows. */
  public static String heading() {
    return row("path", "delay", "", "state");
  }

  /**
   * A row.
   *
   * @param state the path's state
   * @param event its last event, where it had one
   */
  public static String of(WatchLine state, Optional<WatchLine> event) {
    Optional<ShownDelay> shown = state.read().shown();
    String told = event.map(line -> line.clock() + " " + line.brief()).orElse("");
    return row(
        OneLine.brief(state.path().orElse(""), PATH_COLUMNS),
        shown.map(delay -> Numbers.plain(delay.ms(), 2) + " ms").orElse("-"),
        shown.map(delay -> Numbers.plain(delay.samples(), 2) + " smp").orElse("-"),
        shown.isPresent() ? (told.isEmpty() ? "steady" : told) : words(state));
  }

  /** Why nothing is read now, and since when. */
  public static String words(WatchLine state) {
    String why = why(state.state().orElseThrow());
    return state
        .ageSeconds()
        .map(age -> why + ", last read " + age(age.doubleValue()) + " ago")
        .orElse(why + ", not read yet");
  }

  private static String why(PathStatus.State state) {
    return switch (state) {
      case READ -> "read";
      case NO_PROGRAMME -> "nothing plays";
      case NOT_ENOUGH -> "not enough sound";
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
    String row =
        "  %-20s %11s %13s  %s".formatted(path, ms, samples, words).stripTrailing();
    return row.length() > COLUMNS ? row.substring(0, COLUMNS - 3) + "..." : row;
  }
}
