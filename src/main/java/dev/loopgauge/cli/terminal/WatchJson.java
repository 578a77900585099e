package dev.loopgauge.cli.terminal;

import dev.loopgauge.job.WatchListener;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.watch.WatchLine;
import java.util.List;

/** A watch as JSON, a document a line. */
public final class WatchJson implements WatchListener {
  private final Console console;

  /** On a console. */
  public WatchJson(Console console) {
    this.console = console;
  }

  @Override
  public void starts(List<String> paths, String announcement) {
    console.say(announcement + " Ctrl-C ends it.");
  }

  @Override
  public void states(List<WatchLine> states) {
    states.forEach(this::happens);
  }

  @Override
  public void happens(WatchLine event) {
    console.out().println(Json.line(event.json()));
  }

  @Override
  public void notes(String sentence) {
    console.say(sentence);
  }
}
