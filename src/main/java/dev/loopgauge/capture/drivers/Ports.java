package dev.loopgauge.capture.drivers;

import java.util.List;

/**
 * Channels of a device as its driver counts them.
 *
 * @param id the driver's own name of the device
 * @param channels the driver's channels, from 0; send 1 or return 1 is the first of these
 */
record Ports(String id, List<Integer> channels) {
  static final Ports NONE = new Ports("", List.of());

  /** Channels that nobody has counted. */
  static Ports uncounted(String id) {
    return new Ports(id, List.of());
  }

  Ports {
    channels = List.copyOf(channels);
  }

  int count() {
    return channels.size();
  }

  /** Whether the device has this direction at all. */
  boolean isThere() {
    return !id.isEmpty();
  }

  /** Some of them, by number from 1. */
  Ports only(List<Integer> numbers) {
    return new Ports(id, numbers.stream().map(number -> channels.get(number - 1)).toList());
  }
}
