package dev.loopgauge.screen.state;

import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.verify.watch.PathStatus;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a watch has heard so far.
 *
 * @param on whether it goes on
 * @param since when it began
 * @param looked when any path was last heard; empty before the first look
 * @param told what is watched, and at the end what it came to; the first line says most
 * @param states how each path is doing, in the order of the chain file
 * @param events what happened, the last one first
 * @param moved events that started and did not end, of this watch and of those before
 * @param note something else to know, such as that the sound is gone
 */
public record WatchSeen(
    boolean on,
    Instant since,
    Optional<Instant> looked,
    List<String> told,
    List<WatchLine> states,
    List<WatchLine> events,
    List<WatchLine> moved,
    Optional<String> note) {
  /** Nothing was ever watched. */
  public static final WatchSeen NOTHING =
      new WatchSeen(
          false,
          Instant.EPOCH,
          Optional.empty(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          Optional.empty());

  private static final int MOST_EVENTS = 20;

  private static final Optional<PathStatus.State> UNHEARD =
      Optional.of(PathStatus.State.INTERRUPTED);

  /** Copies the lists. */
  public WatchSeen {
    told = List.copyOf(told);
    states = List.copyOf(states);
    events = List.copyOf(events);
    moved = List.copyOf(moved);
  }

  /** Whether there ever was a watch. */
  boolean isAny() {
    return !told.isEmpty();
  }

  /** A watch begins; what moved in an earlier one has still moved. */
  public WatchSeen begins(Instant now, String announcement) {
    return new WatchSeen(
        true,
        now,
        Optional.empty(),
        List.of(announcement),
        List.of(),
        List.of(),
        moved,
        Optional.empty());
  }

  /** The paths were looked at: where none was recorded whole, nothing of now was seen. */
  public WatchSeen looking(Instant now, List<WatchLine> current) {
    boolean heard = current.stream().anyMatch(line -> !line.state().equals(UNHEARD));
    Optional<Instant> seen = heard ? Optional.of(now) : looked;
    return new WatchSeen(on, since, seen, told, current, events, moved, note);
  }

  /** Something starts or ends. */
  public WatchSeen happening(WatchLine event) {
    List<WatchLine> all = new ArrayList<>(events);
    all.add(0, event);
    List<WatchLine> open = new ArrayList<>(moved);
    open.removeIf(one -> one.path().equals(event.path()) && one.event() == event.event());
    if (event.starts()) {
      open.add(event);
    }
    return new WatchSeen(
        on,
        since,
        looked,
        told,
        states,
        all.subList(0, Math.min(MOST_EVENTS, all.size())),
        open,
        note);
  }

  /** Something else is to be known. */
  public WatchSeen noting(String sentence) {
    return new WatchSeen(on, since, looked, told, states, events, moved, Optional.of(sentence));
  }

  /** The chain file has changed. */
  public WatchSeen ofOtherFile() {
    return on
        ? noting("The chain file has changed since: turn watching off and on to follow it.")
        : this;
  }

  /** It is over. */
  public WatchSeen over(List<String> summary) {
    return new WatchSeen(false, since, looked, summary, List.of(), events, moved, Optional.empty());
  }

  /** What happened to a path after a moment and did not end. */
  Optional<WatchLine> movedSince(String path, Instant moment) {
    return moved.stream()
        .filter(event -> event.path().equals(Optional.of(path)) && at(event).isAfter(moment))
        .reduce((one, later) -> later);
  }

  /** An event in a few words: {@code JUMPED +64.00 ± 0.03 samples (+1.33 ms) at 21:14:03}. */
  static String brief(WatchLine event) {
    return event.starts()
        ? event.what().text().orElse("").split(": ", 2)[0] + " at " + event.clock()
        : event.brief();
  }

  /** When an event was. */
  static Instant at(WatchLine event) {
    return OffsetDateTime.parse(event.at()).toInstant();
  }
}
