package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.signal.SampleRate;
import java.util.Optional;

/**
 * A device of a driver.
 *
 * @param driver the driver's name
 * @param name the device's own name
 * @param sends what it plays to
 * @param returns what it records from
 * @param rate the rate that it runs at, where it says so
 * @param rateSource whose rate that is
 * @param duplex whether the driver plays and records in one callback
 * @param alone whether who opens it has it alone, so that other programs fall silent
 */
record DriverDevice(
    String driver,
    String name,
    Ports sends,
    Ports returns,
    Optional<SampleRate> rate,
    RateSource rateSource,
    boolean duplex,
    boolean alone) {
  /** The name that people use. */
  String fullName() {
    return driver + ": " + name;
  }

  Ports ports(boolean output) {
    return output ? sends : returns;
  }

  AudioDevice shown() {
    return new AudioDevice(
        fullName(),
        sends.count(),
        returns.count(),
        rate.stream().toList(),
        rateSource,
        isSampleLocked());
  }

  private boolean isSampleLocked() {
    return duplex && sends.count() > 0 && returns.count() > 0;
  }
}
