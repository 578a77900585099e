package dev.loopgauge.capture.simulated;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.FlowLimit;
import java.util.concurrent.TimeUnit;

/** How fast a simulated stream flows. */
public interface Pace {
  /** As fast as it can be made; nothing waits. */
  Pace UNBOUND = () -> seconds -> {};

  /** As fast as a sound card's. */
  Pace REAL_TIME =
      () -> {
        long started = System.nanoTime();
        return seconds -> {
          while (System.nanoTime() - started < seconds * TimeUnit.SECONDS.toNanos(1)) {
            FlowLimit.pause();
          }
        };
      };

  /** A stream begins. */
  Flow start();

  /** One stream. */
  interface Flow {
    /**
     * Returns once that much sound would have come.
     *
     * @param seconds counted from the start of the stream
     * @throws CaptureException when waiting is interrupted
     */
    void until(double seconds) throws CaptureException;
  }
}
