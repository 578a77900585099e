package dev.loopgauge.cli.terminal;

import dev.loopgauge.job.WatchListener;
import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.report.watch.WatchRow;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;

/** A watch on a terminal: a row for each path, drawn anew in place, and events above them. */
public final class WatchScreen implements WatchListener {
  /** No more than four pictures a second: a terminal far away is slow. */
  private static final long LEAST_NANOS = TimeUnit.MILLISECONDS.toNanos(250);

  private static final String UP = "\u001b[%dA";
  private static final String CLEAR_BELOW = "\u001b[J";

  private final Console console;
  private final UnaryOperator<String> paint;
  private final Map<String, WatchLine> events = new HashMap<>();
  private int rows;
  private long drawn;
  private List<WatchLine> last = List.of();

  /**
   * On a terminal.
   *
   * @param paint colours words
   */
  public WatchScreen(Console console, UnaryOperator<String> paint) {
    this.console = console;
    this.paint = paint;
  }

  @Override
  public void starts(List<String> paths, String announcement) {
    console.say(announcement + " Ctrl-C ends it.");
  }

  @Override
  public void states(List<WatchLine> states) {
    last = states;
    long now = System.nanoTime();
    if (rows == 0 || now - drawn >= LEAST_NANOS) {
      drawn = now;
      draw("");
    }
  }

  @Override
  public void happens(WatchLine event) {
    event.path().ifPresent(path -> events.put(path, event));
    draw(event.text());
  }

  @Override
  public void notes(String sentence) {
    draw(sentence + "\n");
  }

  /** The rows that stay are the last ones, not those of a moment ago. */
  @Override
  public void ends() {
    draw("");
  }

  /** Replaces the rows by some lines that stay, and the rows below them. */
  private void draw(String lines) {
    StringBuilder picture = new StringBuilder();
    if (rows > 0) {
      picture.append(UP.formatted(rows)).append(CLEAR_BELOW);
    }
    picture.append(lines);
    rows = 0;
    if (!last.isEmpty()) {
      picture.append(WatchRow.heading()).append('\n');
      for (WatchLine state : last) {
        Optional<WatchLine> event = Optional.ofNullable(events.get(state.path().orElseThrow()));
        picture.append(WatchRow.of(state, event)).append('\n');
      }
      rows = last.size() + 1;
    }
    console.out().print(paint.apply(picture.toString()));
    console.out().flush();
  }
}
