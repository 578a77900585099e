package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.CaptureException;
import java.util.Arrays;
import org.jaudiolibs.jnajack.JackException;
import org.jaudiolibs.jnajack.JackPort;

/**
 * A patch between a port of this program and one of the rig.
 *
 * @param own this program's port
 * @param other the full name of the rig's port
 */
record Connection(JackPort own, String other) {
  /**
   * Looks whether it is still there. A client that ends takes its ports with it, and what is left
   * is silence without an error.
   *
   * @throws CaptureException with {@code GONE} when it isn't
   */
  void check() throws CaptureException {
    if (!isThere()) {
      throw new CaptureException(
          CaptureException.Kind.GONE,
          "The patch between %s and %s went away during the take.".formatted(own.getName(), other),
          "Is the program that '%s' belongs to still running?".formatted(other));
    }
  }

  private boolean isThere() {
    try {
      return Arrays.asList(own.getConnections()).contains(other);
    } catch (JackException e) {
      return false;
    }
  }
}
