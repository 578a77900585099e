package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import java.util.List;
import java.util.Map;

/**
 * The devices of one driver.
 *
 * @param devices those that open
 * @param hidden those that don't, each with the reason
 */
record Listing(List<DriverDevice> devices, Map<String, String> hidden) {
  /** Says why a device that is there doesn't open. */
  CaptureException refusal(String driver, String name) {
    return new CaptureException(
        Kind.BUSY,
        "\"%s: %s\" doesn't open: %s."
            .formatted(driver, name, hidden.getOrDefault(name, "it is gone")),
        "Close other programs that use it, or plug it in, and try again.");
  }
}
