package dev.loopgauge.capture.javasound;

import java.util.Optional;

/**
 * A device that the platform lists, reduced to what is used here. To fake it, state some counts and
 * decide which formats open; see {@code FakeDevice} in the tests.
 */
interface SoundDevice {
  /** The name that options take. */
  String name();

  /** Whether sound can go that way at all; quick, without opening anything. */
  boolean has(Direction direction);

  /** What it states about one direction; the device's own where the system tells it. */
  Stated stated(Direction direction);

  /** Opens a line, or nothing when the device refuses: other format, in use, or gone. */
  Optional<PcmLine> open(Direction direction, LineFormat format);
}
