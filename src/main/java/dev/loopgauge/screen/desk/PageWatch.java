package dev.loopgauge.screen.desk;

import dev.loopgauge.job.WatchListener;
import dev.loopgauge.report.form.Discreet;
import dev.loopgauge.report.watch.WatchLine;
import java.time.Instant;
import java.util.List;

/**
 * Hands on to the page what a watch hears.
 *
 * @param known learns of it
 * @param discreet goes over what is told
 */
record PageWatch(Knowledge known, Discreet discreet) implements WatchListener {
  @Override
  public void starts(List<String> paths, String announcement) {
    known.watching(seen -> seen.begins(Instant.now(), discreet.told(announcement)));
  }

  @Override
  public void states(List<WatchLine> states) {
    known.watching(seen -> seen.looking(Instant.now(), states));
  }

  @Override
  public void happens(WatchLine event) {
    known.watching(seen -> seen.happening(event));
  }

  @Override
  public void notes(String sentence) {
    known.watching(seen -> seen.noting(discreet.told(sentence)));
  }

  /** It is over, and came to this, unless that was told already. */
  void over(String text) {
    known.watching(seen -> seen.on() ? seen.over(discreet.told(text).lines().toList()) : seen);
  }
}
