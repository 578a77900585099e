package dev.loopgauge.capture;

import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.Optional;

/**
 * A recording of a whole take.
 *
 * @param returns one signal for each return of the session, in its order, each as long as the take
 * @param incidents what happened meanwhile that the engineer must know; empty for a clean take
 * @param rate how far the device's rate is off by this computer's clock, where that could be told
 */
public record Capture(List<Signal> returns, List<Incident> incidents, Optional<DeviceRate> rate) {
  /** A recording that says nothing of the device's rate. */
  public Capture(List<Signal> returns, List<Incident> incidents) {
    this(returns, incidents, Optional.empty());
  }

  /** Copies the lists. */
  public Capture {
    returns = List.copyOf(returns);
    incidents = List.copyOf(incidents);
  }
}
