package dev.loopgauge.capture;

import dev.loopgauge.signal.Signal;
import java.util.List;

/**
 * A recording of a whole take.
 *
 * @param returns one signal for each return of the session, in its order, each as long as the take
 * @param incidents what happened meanwhile that the engineer must know; empty for a clean take
 */
public record Capture(List<Signal> returns, List<Incident> incidents) {
  /** Copies the lists. */
  public Capture {
    returns = List.copyOf(returns);
    incidents = List.copyOf(incidents);
  }
}
