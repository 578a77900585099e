package dev.loopgauge.capture.jack;

import dev.loopgauge.capture.CaptureException;

/**
 * A patch between a port of this program and one of the rig.
 *
 * @param own this program's port
 * @param other the full name of the rig's port
 */
record PortPatch(ServerPort own, String other) {
  /**
   * Looks whether it is still there. A client that ends takes its ports with it, and what is left
   * is silence without an error.
   *
   * @throws CaptureException with {@code GONE} when it isn't
   */
  void check() throws CaptureException {
    if (!own.patchedTo().contains(other)) {
      throw new CaptureException(
          CaptureException.Kind.GONE,
          "The patch between %s and %s went away during the take.".formatted(own.name(), other),
          "Is the program that '%s' belongs to still running?".formatted(other));
    }
  }
}
