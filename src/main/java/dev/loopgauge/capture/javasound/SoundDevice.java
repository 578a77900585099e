package dev.loopgauge.capture.javasound;

import java.util.Optional;

/**
 * A device that the platform lists, reduced to what is used here. To fake it, state some counts and
 * decide which formats open; see {@code FakeDevice} in the tests.
 */
interface SoundDevice {
  /** The name that options take. */
  String name();

  /**
   * Whether who opens it has it alone. Then the system opens it for a moment to answer what
   * follows.
   */
  boolean alone();

  /** Whether sound can go that way at all. */
  boolean has(Direction direction);

  /** What it states about one direction; the device's own where the system tells it. */
  Stated stated(Direction direction);

  /** Opens a line, or nothing when the device refuses: other format, in use, or gone. */
  Optional<PcmLine> open(Direction direction, LineFormat format);
}
