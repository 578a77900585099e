package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import java.util.Optional;

/**
 * Tells that a reference died: it is silent to the last bit for two windows with sound of their own
 * while the return sounds as it did when it was read. A pause in which all is silent is none.
 */
final class ReferenceWatch {
  private double quietestRead = Double.POSITIVE_INFINITY;
  private Optional<WindowReading> since = Optional.empty();
  private boolean told;

  /** Whether the reference is dead. */
  boolean isDead() {
    return told;
  }

  /** Takes the next window. */
  Optional<WatchEvent> next(WindowReading window) {
    if (window.delay().isPresent()) {
      quietestRead = Math.min(quietestRead, window.heardDbfs());
    }
    boolean dead =
        !window.interrupted()
            && window.sentDbfs() < WindowReading.SILENCE_DBFS
            && window.heardDbfs() >= quietestRead;
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
}
