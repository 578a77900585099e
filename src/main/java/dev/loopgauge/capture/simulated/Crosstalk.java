package dev.loopgauge.capture.simulated;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Limits;

/**
 * The return hears another path as well; at 0 dB, two cables are joined in one return.
 *
 * @param other the path that is heard as well
 * @param db how loud against what its own return hears, -120 to 20 dB
 */
record Crosstalk(String other, double db) implements RoutingFault {
  Crosstalk {
    Limits.check("crosstalk", db, -120, 20, "dB");
  }

  /** The same as a factor. */
  double factor() {
    return Decibels.toFactor(db);
  }
}
