package dev.loopgauge.report.watch;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Outcome;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Sparse;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a watch came to.
 *
 * @param outcome whether each path was read at some time
 * @param event always the summary
 * @param at when it ended
 * @param atSeconds how long it was, in seconds
 * @param moved whether anything moved
 * @param everySeconds how long it was from one look at all paths to the next, in the mean
 * @param paths each path that was watched
 * @param lostFrames how many frames the recording itself lost
 * @param ended why it ended before its time; left out where it didn't
 */
public record WatchSummary(
    String command,
    Outcome outcome,
    WatchLine.Event event,
    String at,
    BigDecimal atSeconds,
    boolean moved,
    BigDecimal everySeconds,
    List<PathPart> paths,
    int lostFrames,
    Optional<String> ended)
    implements Document, Sparse {
  /**
   * One path.
   *
   * @param windows how many windows were listened to
   * @param read in how many of them the delay was read
   * @param firstSamples the first delay that was read
   * @param lastSamples the last one
   * @param events how many events started
   */
  public record PathPart(
      String path,
      int windows,
      int read,
      Optional<BigDecimal> firstSamples,
      Optional<BigDecimal> lastSamples,
      int events) {}

  @Override
  public Set<String> leftOut() {
    return Set.of("ended");
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet().line(headline());
    for (PathPart part : paths) {
      sheet.row(part.path(), told(part));
    }
    sheet.row("each path", "read each " + Numbers.plain(everySeconds.doubleValue(), 1) + " s");
    if (lostFrames > 0) {
      sheet.row("recording", lostFrames + " frames were lost by the recording itself");
    }
    ended.ifPresent(why -> sheet.row("ended", why));
    return sheet.toString();
  }

  private String headline() {
    String time = Numbers.clock(atSeconds.doubleValue());
    int events = paths.stream().mapToInt(PathPart::events).sum();
    if (paths.stream().allMatch(part -> part.read() == 0)) {
      return "No trustworthy reading: in %s no path's delay could be told.".formatted(time);
    }
    long unread = paths.stream().filter(part -> part.read() == 0).count();
    String never = unread == 0 ? "" : ", %d of %d paths never read".formatted(unread, paths.size());
    if (moved) {
      return "CHANGED: %s in %s%s."
          .formatted(events == 1 ? "1 event" : events + " events", time, never);
    }
    return "%s: in %s nothing moved%s.".formatted(unread == 0 ? "GOOD" : "UNDECIDED", time, never);
  }

  private static String told(PathPart part) {
    if (part.read() == 0) {
      return "never read, in %d windows".formatted(part.windows());
    }
    String events = part.events() == 1 ? "1 event" : part.events() + " events";
    return "%s → %s samples, %s, read in %d of %d windows"
        .formatted(
            Numbers.plain(part.firstSamples().orElseThrow().doubleValue(), 2),
            Numbers.plain(part.lastSamples().orElseThrow().doubleValue(), 2),
            part.events() == 0 ? "nothing moved" : events,
            part.read(),
            part.windows());
  }
}
