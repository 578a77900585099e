package dev.loopgauge.metrics;

import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Lets through who asks for this computer by its own name. A page of somebody else in a browser
 * here can have its own name point at this computer (DNS rebinding), but its browser then sends
 * that name as the Host.
 *
 * @param hosts the names, with the port
 */
record HostHeaderGuard(Set<String> hosts) {
  /** For a server on a port of an address of this computer. */
  static HostHeaderGuard on(String address, int port) {
    return new HostHeaderGuard(Set.of("localhost:" + port, address + ":" + port, "[::1]:" + port));
  }

  /**
   * Whether a request may pass.
   *
   * @param sent its Host headers; null where there is none
   */
  boolean passes(List<String> sent) {
    return sent != null && sent.size() == 1 && hosts.contains(sent.get(0).toLowerCase(Locale.ROOT));
  }
}
