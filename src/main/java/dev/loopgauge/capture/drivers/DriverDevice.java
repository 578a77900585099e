package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;

/**
 * A device of a driver. One that who opens it has alone is listed uncounted: its ports have no
 * channels yet.
 *
 * @param driver the driver's name
 * @param name the device's own name
 * @param sends what it plays to
 * @param returns what it records from
 * @param rate the rate that it runs at, where it says so
 * @param own the rates that it runs at by itself, where at another one a layer of the system would
 *     convert; else none
 * @param rateSource whose rate that is
 * @param duplex whether the driver plays and records in one callback
 * @param alone whether who opens it has it alone, so that other programs fall silent
 * @param counted whether its channels were counted
 */
record DriverDevice(
    String driver,
    String name,
    Ports sends,
    Ports returns,
    Optional<SampleRate> rate,
    List<SampleRate> own,
    RateSource rateSource,
    boolean duplex,
    boolean alone,
    boolean counted) {
  private static final SampleRate USUAL = new SampleRate(48_000);

  /** Copies the list. */
  DriverDevice {
    own = List.copyOf(own);
  }

  /** One that was not opened, as its driver names it. */
  static DriverDevice uncounted(
      String driver, String name, Ports sends, Ports returns, boolean duplex) {
    return new DriverDevice(
        driver,
        name,
        sends,
        returns,
        Optional.empty(),
        List.of(),
        RateSource.DEVICE,
        duplex,
        true,
        false);
  }

  /** The name that people use. */
  String fullName() {
    return driver + ": " + name;
  }

  /** The same where it is known at which rates it runs by itself: at 48 kHz if that is one. */
  DriverDevice runningAt(List<SampleRate> rates, RateSource known) {
    SampleRate first = rates.contains(USUAL) ? USUAL : rates.get(0);
    return new DriverDevice(
        driver, name, sends, returns, Optional.of(first), rates, known, duplex, alone, counted);
  }

  /** What plays and what records under one name; of what differs, that which promises less. */
  DriverDevice joinedWith(DriverDevice other) {
    List<SampleRate> both =
        own.isEmpty() || other.own.isEmpty()
            ? List.of()
            : own.stream().filter(other.own::contains).toList();
    return new DriverDevice(
        driver,
        name,
        may(true) ? sends : other.sends,
        may(false) ? returns : other.returns,
        rate.or(other::rate),
        both,
        rateSource.compareTo(other.rateSource) > 0 ? rateSource : other.rateSource,
        duplex,
        alone || other.alone,
        counted && other.counted);
  }

  Ports ports(boolean output) {
    return output ? sends : returns;
  }

  /** Whether it plays or records; uncounted, whether its driver lists it for that. */
  boolean may(boolean output) {
    return counted ? ports(output).count() > 0 : ports(output).isThere();
  }

  AudioDevice shown() {
    if (!counted) {
      return AudioDevice.uncounted(fullName(), rateSource, isSampleLocked());
    }
    return new AudioDevice(
        fullName(),
        sends.count(),
        returns.count(),
        own.isEmpty() ? rate.stream().toList() : own,
        rateSource,
        isSampleLocked());
  }

  private boolean isSampleLocked() {
    return duplex && may(true) && may(false);
  }
}
