package dev.loopgauge.verify.watch;

import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import java.util.Optional;

/**
 * Tells that a path's polarity changed, once two windows with sound of their own agree. Noise alone
 * turns the sign of a delay that can be trusted less than once in 10^15 windows: its correlation
 * stands eight standard deviations out.
 */
final class PolarityWatch {
  private Optional<Boolean> first = Optional.empty();
  private boolean now;
  private Optional<WindowReading> other = Optional.empty();

  /** Takes the next polarity. */
  Optional<WatchEvent> next(WindowReading window, boolean inverted) {
    if (first.isEmpty()) {
      first = Optional.of(inverted);
      now = inverted;
    }
    if (inverted == now) {
      other = Optional.empty();
      return Optional.empty();
    }
    if (other.isEmpty()) {
      other = Optional.of(window);
    }
    if (window.fromSeconds() < other.get().toSeconds()) {
      return Optional.empty();
    }
    now = inverted;
    double at = other.get().middleSeconds();
    other = Optional.empty();
    Phase phase = first.get() == inverted ? Phase.ENDS : Phase.STARTS;
    return Optional.of(new WatchEvent.Polarity(phase, at, inverted));
  }

  /** Whether the polarity turned, and nobody knows yet whether it stays so. */
  boolean isOpen() {
    return other.isPresent();
  }

  /** Whether the polarity is another one than when the watch began. */
  boolean hasMoved() {
    return first.filter(before -> before != now).isPresent();
  }
}
