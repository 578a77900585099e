package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.stats.Median;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * Tells that a reference died: it is silent to the last bit for two windows with sound of their own
 * while the return is as loud as in most windows that were read. A pause in which all is silent is
 * none; one in which the return holds as much other sound can't be told from it.
 */
final class ReferenceWatch {
  private static final int REMEMBERED = 31;

  private final Deque<Double> loudnessRead = new ArrayDeque<>();
  private Optional<WindowReading> since = Optional.empty();
  private boolean told;

  /** Whether the reference is dead. */
  boolean isDead() {
    return told;
  }

  /** Takes the next window. */
  Optional<WatchEvent> next(WindowReading window) {
    if (window.delay().isPresent()) {
      loudnessRead.addLast(window.heardDbfs());
      if (loudnessRead.size() > REMEMBERED) {
        loudnessRead.removeFirst();
      }
    }
    boolean dead =
        !window.interrupted()
            && window.sentDbfs() < WindowReading.SILENCE_DBFS
            && window.heardDbfs() >= usual();
    if (!dead) {
      boolean ends = told && window.sentDbfs() >= WindowReading.SILENCE_DBFS;
      since = Optional.empty();
      told &= !ends;
      return ends
          ? Optional.of(new WatchEvent.Reference(Phase.ENDS, window.middleSeconds()))
          : Optional.empty();
    }
    if (since.isEmpty()) {
      since = Optional.of(window);
    }
    if (told || window.fromSeconds() < since.get().toSeconds()) {
      return Optional.empty();
    }
    told = true;
    return Optional.of(new WatchEvent.Reference(Phase.STARTS, since.get().fromSeconds()));
  }

  private double usual() {
    return loudnessRead.isEmpty()
        ? Double.POSITIVE_INFINITY
        : Median.of(loudnessRead.stream().mapToDouble(loud -> loud).toArray());
  }
}
