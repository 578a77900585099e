package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.ReturnPart;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Tells sound that went out and did not come back. Short gaps are what windows lack of the path
 * that was fitted in them ({@link GapWatch}); longer ones are parts in which the return is silent
 * though sound is due. Both of one time are one loss.
 */
final class LossWatch {
  /**
   * Less than this is left to gaps: so short, an octave's mean level may be off by 20 dB for what
   * sounds just then.
   */
  private static final double SHORTEST_SECONDS = 0.1;

  private final GapWatch gaps = new GapWatch();
  private final List<MissingSound> held = new ArrayList<>();
  private OptionalDouble since = OptionalDouble.empty();
  private double until;
  private double lostSeconds;
  private boolean told;

  /** Whether the return is silent though its reference sounds. */
  boolean isSilent() {
    return told;
  }

  /**
   * Takes the next window.
   *
   * @param open whether delay or polarity may just have changed: what looks like a gap may be that
   */
  List<WatchEvent> next(WindowReading window, boolean open) {
    List<WatchEvent> events = new ArrayList<>();
    if (window.delay().isPresent() && !open) {
      // Gaps within a loss that goes on are that.
      tell(Math.min(window.fromSeconds(), since.orElse(window.fromSeconds())), events);
    }
    for (ReturnPart part : window.parts()) {
      if (part.lost()) {
        goOn(part);
      } else {
        end(part.fromSeconds(), events);
      }
    }
    if (!told && isLoss() && until - since.getAsDouble() >= window.lengthSeconds()) {
      told = true;
      events.add(
          new WatchEvent.LostSound(Phase.STARTS, since.getAsDouble(), OptionalDouble.empty()));
    }
    gaps.next(window);
    return events;
  }

  private void goOn(ReturnPart part) {
    if (since.isEmpty()) {
      since = OptionalDouble.of(part.fromSeconds());
      lostSeconds = 0;
    }
    until = part.toSeconds();
    lostSeconds += part.seconds();
  }

  private boolean isLoss() {
    return since.isPresent() && lostSeconds >= SHORTEST_SECONDS;
  }

  private MissingSound lost() {
    return new MissingSound(since.getAsDouble(), 1000 * (until - since.getAsDouble()));
  }

  /** The sound is there again. */
  private void end(double at, List<WatchEvent> events) {
    if (isLoss()) {
      MissingSound lost = lost();
      gaps.knows(lost);
      if (told) {
        events.add(new WatchEvent.LostSound(Phase.ENDS, at, OptionalDouble.of(lost.ms())));
      } else {
        held.add(lost);
      }
    }
    since = OptionalDouble.empty();
    told = false;
  }

  /**
   * The delay or the polarity changed: a gap beside that is what the change looks like.
   *
   * @param bySeconds by how much the delay changed, which is silent where it grew
   */
  void changed(double atSeconds, double windowSeconds, double bySeconds) {
    gaps.changed(atSeconds, windowSeconds);
    held.removeIf(
        lost ->
            Math.abs(lost.atSeconds() - atSeconds) <= windowSeconds
                && lost.ms() / 1000 <= Math.abs(bySeconds) + SHORTEST_SECONDS);
  }

  /** What was still to be told when the watch ended. */
  List<WatchEvent> finish() {
    List<WatchEvent> events = new ArrayList<>();
    if (isLoss()) {
      gaps.knows(lost());
      if (!told) {
        held.add(lost());
      }
    }
    tell(Double.POSITIVE_INFINITY, events);
    return events;
  }

  /** A loss is told once a window after it was read. */
  private void tell(double heardFrom, List<WatchEvent> events) {
    List<MissingSound> due = new ArrayList<>(gaps.due(heardFrom));
    for (MissingSound lost : held) {
      if (GapWatch.end(lost) <= heardFrom) {
        due.add(lost);
      }
    }
    held.removeAll(due);
    for (MissingSound lost : due) {
      OptionalDouble ms = OptionalDouble.of(lost.ms());
      events.add(new WatchEvent.LostSound(Phase.STARTS, lost.atSeconds(), ms));
      events.add(new WatchEvent.LostSound(Phase.ENDS, GapWatch.end(lost), ms));
    }
  }
}
