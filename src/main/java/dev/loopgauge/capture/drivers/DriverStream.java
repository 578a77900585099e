package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.signal.SampleRate;

/** An open stream of a driver. All is called on the thread of {@link DriverThread}. */
interface DriverStream {
  /** The rate that it runs at. */
  SampleRate rate();

  /** How many frames a block has at the most. */
  int frames();

  /** Lets sound flow; the handler is called from now on. */
  void start() throws CaptureException;

  /**
   * Sees that it is still what was opened.
   *
   * @throws CaptureException with {@code GONE} when the device ended or is another now
   */
  void check() throws CaptureException;

  /** Ends it; the handler isn't called any more. */
  void close();
}
