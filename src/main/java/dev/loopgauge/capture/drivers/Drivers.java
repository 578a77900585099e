package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import java.util.List;

/**
 * The drivers of this computer. All is called on one thread, that of {@link DriverThread}. A double
 * needs no sound card: it lists what it likes and calls the handler from a thread of its own.
 */
interface Drivers {
  /** Their names, the one to prefer first: "ASIO", "JACK", "ALSA". */
  List<String> names();

  /**
   * What a driver offers. What other programs may hold alone is listed uncounted, and not opened.
   *
   * @throws CaptureException when the driver doesn't answer as such
   */
  Listing list(String driver) throws CaptureException;

  /**
   * A listed device with its channels counted; it is opened for a moment.
   *
   * @throws CaptureException when it doesn't open
   */
  DriverDevice counted(DriverDevice device) throws CaptureException;

  /**
   * Opens channels; nothing flows yet.
   *
   * @throws CaptureException when they don't open so; the message says why
   */
  DriverStream open(StreamPlan plan, BlockHandler handler) throws CaptureException;
}
