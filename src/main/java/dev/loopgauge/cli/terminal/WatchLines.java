package dev.loopgauge.cli.terminal;

import dev.loopgauge.job.WatchListener;
import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.report.watch.WatchRow;
import dev.loopgauge.verify.watch.PathStatus;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A watch in plain lines: each event, and each path when it is read or no longer read. */
public final class WatchLines implements WatchListener {
  private final Console console;
  private final Map<String, PathStatus.State> before = new HashMap<>();

  /** On a console. */
  public WatchLines(Console console) {
    this.console = console;
  }

  @Override
  public void starts(List<String> paths, String announcement) {
    console.say(announcement + " Ctrl-C ends it.");
  }

  @Override
  public void states(List<WatchLine> states) {
    for (WatchLine state : states) {
      PathStatus.State now = state.state().orElseThrow();
      if (before.put(state.path().orElseThrow(), now) != now) {
        console.out().println(WatchRow.line(state));
      }
    }
  }

  @Override
  public void happens(WatchLine event) {
    console.out().print(event.text());
    console.out().flush();
  }

  @Override
  public void notes(String sentence) {
    console.say(sentence);
  }
}
