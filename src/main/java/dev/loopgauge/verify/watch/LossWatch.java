package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Tells sound that went out and did not come back: gaps within a window, and returns that fell
 * silent while their reference sounds on in the octaves that the path passes.
 */
final class LossWatch {
  /** As within a window: less than this against what is due is lost, a tenth, in dB. */
  private static final double LOST_DB = -20;

  /** Gaps are found in steps of 5 ms; the same one is told alike to two of them, in seconds. */
  private static final double SAME_SECONDS = 0.01;

  /** What lies so near to a window's edge may have no sound beside it there, in seconds. */
  private static final double MIDDLE_SECONDS = 0.1;

  private final List<MissingSound> told = new ArrayList<>();
  private OptionalDouble silentSince = OptionalDouble.empty();
  private final List<MissingSound> seen = new ArrayList<>();
  private final List<MissingSound> held = new ArrayList<>();
  private boolean silenceTold;
  private double silentUntil;

  /** Whether the return is silent though its reference sounds. */
  boolean isSilent() {
    return silenceTold;
  }

  /**
   * Takes the next window.
   *
   * @param open whether delay or polarity may just have changed: what looks like a gap may be that
   */
  List<WatchEvent> next(WindowReading window, boolean open) {
    List<WatchEvent> events = new ArrayList<>();
    told.removeIf(gap -> end(gap) < window.fromSeconds() - 2 * window.lengthSeconds());
    if (window.delay().isPresent()) {
      if (!open) {
        tell(window.fromSeconds(), events);
      }
      back(window, events);
      if (window.fromSeconds() >= silentUntil) {
        hold(window, window.delay().get());
      }
    } else if (isLost(window)) {
      lost(window, events);
    } else if (!silenceTold) {
      silentSince = OptionalDouble.empty();
    }
    return events;
  }

  /** Delay or polarity changed at a time: windows that hold it tell nothing of gaps. */
  void changed(double atSeconds, double windowSeconds) {
    held.removeIf(gap -> Math.abs(gap.atSeconds() - atSeconds) <= windowSeconds);
  }

  /** What was still to be told when the watch ended. */
  List<WatchEvent> finish() {
    List<WatchEvent> events = new ArrayList<>();
    tell(Double.POSITIVE_INFINITY, events);
    return events;
  }

  private static boolean isLost(WindowReading window) {
    return !window.interrupted()
        && window.dueDbfs().isPresent()
        && window.dueDbfs().getAsDouble() > WindowReading.SILENCE_DBFS - LOST_DB
        && window.heardDbfs() < window.dueDbfs().getAsDouble() + LOST_DB;
  }

  /** One window may hold the last sound of before; two in a row are silent. */
  private void lost(WindowReading window, List<WatchEvent> events) {
    if (silentSince.isEmpty()) {
      silentSince = OptionalDouble.of(window.fromSeconds());
    } else if (!silenceTold) {
      silenceTold = true;
      // What looked like a gap was the beginning of this.
      held.removeIf(gap -> end(gap) > silentSince.getAsDouble() - window.lengthSeconds());
      events.add(
          new WatchEvent.LostSound(
              Phase.STARTS, silentSince.getAsDouble(), OptionalDouble.empty()));
    }
  }

  private void back(WindowReading window, List<WatchEvent> events) {
    if (silenceTold) {
      double at = window.middleSeconds();
      double ms = 1000 * (at - silentSince.getAsDouble());
      events.add(new WatchEvent.LostSound(Phase.ENDS, at, OptionalDouble.of(ms)));
      silentUntil = at;
    }
    silentSince = OptionalDouble.empty();
    silenceTold = false;
  }

  /**
   * A window that holds little sound may be fitted badly: a gap counts once a second window shows
   * it too. In the middle of one window it lies at the edges of those beside, where none is found.
   */
  private void hold(WindowReading window, FollowedDelay read) {
    for (MissingSound gap : read.lost()) {
      if (contains(told, gap)) {
        continue;
      }
      boolean middle = Math.abs(gap.atSeconds() - window.middleSeconds()) < MIDDLE_SECONDS;
      if (middle || contains(seen, gap)) {
        told.add(gap);
        held.add(gap);
      }
    }
    seen.clear();
    seen.addAll(read.lost());
  }

  private static boolean contains(List<MissingSound> gaps, MissingSound gap) {
    for (MissingSound other : gaps) {
      if (gap.atSeconds() < end(other) + SAME_SECONDS
          && end(gap) > other.atSeconds() - SAME_SECONDS) {
        return true;
      }
    }
    return false;
  }

  /** A gap is told once a window after it was read: else the return may have fallen silent. */
  private void tell(double heardFrom, List<WatchEvent> events) {
    for (MissingSound gap : held) {
      if (end(gap) <= heardFrom) {
        OptionalDouble ms = OptionalDouble.of(gap.ms());
        events.add(new WatchEvent.LostSound(Phase.STARTS, gap.atSeconds(), ms));
        events.add(new WatchEvent.LostSound(Phase.ENDS, end(gap), ms));
      }
    }
    held.removeIf(gap -> end(gap) <= heardFrom);
  }

  private static double end(MissingSound gap) {
    return gap.atSeconds() + gap.ms() / 1000;
  }
}
