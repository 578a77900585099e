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
   * What a driver offers.
   *
   * @throws CaptureException when the driver doesn't answer as such
   */
  Listing list(String driver) throws CaptureException;

  /**
   * The names of those devices of a driver that who opens them has alone. None of these is opened
   * to find that out, except by ALSA, for a moment.
   *
   * @throws CaptureException when the driver doesn't answer as such
   */
  List<String> alone(String driver) throws CaptureException;

  /**
   * Opens channels; nothing flows yet.
   *
   * @throws CaptureException when they don't open so; the message says why
   */
  DriverStream open(StreamPlan plan, BlockHandler handler) throws CaptureException;
}
