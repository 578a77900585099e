package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.SessionRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Finds the devices that a request means. A name begins with its driver, so only that driver is
 * asked; without any name the first driver serves that can do both.
 */
final class ChosenDevices {
  private final Drivers drivers;
  private final SessionRequest request;

  ChosenDevices(Drivers drivers, SessionRequest request) {
    this.drivers = drivers;
    this.request = request;
  }

  /**
   * A listed device, opened for a moment to count its channels.
   *
   * @param name as it was listed, with its driver
   */
  static DriverDevice counted(Drivers drivers, String name) throws CaptureException {
    for (DriverDevice device : drivers.list(driverOf(drivers, name)).devices()) {
      if (device.fullName().equals(name)) {
        return drivers.counted(device);
      }
    }
    throw new CaptureException(
        Kind.NO_SUCH_DEVICE,
        "\"%s\" is gone.".formatted(name),
        "Plug it in, and list the devices again.");
  }

  /** The plan for them. */
  StreamPlan plan() throws CaptureException {
    Optional<String> named = request.output().or(request::input);
    return named.isPresent() ? planOf(driverOf(drivers, named.get())) : planOfFirst();
  }

  /**
   * The device that the request takes for itself; empty where it shares all with others. Nothing is
   * opened that others may hold alone.
   */
  Optional<String> alone() throws CaptureException {
    Optional<String> named = request.output().or(request::input);
    if (named.isPresent()) {
      return aloneOf(driverOf(drivers, named.get()));
    }
    for (String driver : drivers.names()) {
      try {
        return aloneOf(driver);
      } catch (CaptureException e) {
        // The next one may serve, as when it is opened.
      }
    }
    return Optional.empty();
  }

  private Optional<String> aloneOf(String driver) throws CaptureException {
    Listing listing = drivers.list(driver);
    DriverDevice input = find(listing, driver, request.input().or(request::output), false);
    DriverDevice output =
        request.sends().isEmpty()
            ? input
            : find(listing, driver, request.output().or(request::input), true);
    return Stream.of(output, input)
        .filter(DriverDevice::alone)
        .map(DriverDevice::fullName)
        .findFirst();
  }

  private StreamPlan planOfFirst() throws CaptureException {
    List<String> reasons = new ArrayList<>();
    for (String driver : drivers.names()) {
      try {
        return planOf(driver);
      } catch (CaptureException e) {
        if (e.kind() != Kind.NO_SUCH_DEVICE && e.kind() != Kind.BACKEND_UNUSABLE) {
          throw e;
        }
        reasons.add(e.getMessage());
      }
    }
    throw new CaptureException(
        Kind.BACKEND_UNUSABLE,
        "No driver here both plays and records. " + String.join(" ", reasons),
        "Plug the sound card in, or start the audio server.");
  }

  private static String driverOf(Drivers drivers, String name) throws CaptureException {
    String start = name.toLowerCase(Locale.ROOT);
    for (String driver : drivers.names()) {
      if (start.startsWith(driver.toLowerCase(Locale.ROOT))) {
        return driver;
      }
    }
    throw new CaptureException(
        Kind.NO_SUCH_DEVICE,
        "\"%s\" doesn't begin with a driver; here there are %s."
            .formatted(name, String.join(", ", drivers.names())),
        "Give a name as `loopgauge devices` lists it.");
  }

  private StreamPlan planOf(String driver) throws CaptureException {
    Listing listing = drivers.list(driver);
    DriverDevice input =
        drivers.counted(find(listing, driver, request.input().or(request::output), false));
    if (request.sends().isEmpty()) {
      return StreamPlan.of(request, input, input);
    }
    DriverDevice output =
        drivers.counted(find(listing, driver, request.output().or(request::input), true));
    return StreamPlan.of(request, output, input);
  }

  private static DriverDevice find(
      Listing listing, String driver, Optional<String> name, boolean output)
      throws CaptureException {
    List<DriverDevice> able =
        listing.devices().stream().filter(device -> device.may(output)).toList();
    if (name.isEmpty() && !able.isEmpty()) {
      return able.stream().filter(DriverDevice::counted).findFirst().orElse(able.get(0));
    }
    if (name.isPresent()) {
      for (DriverDevice device : able) {
        if (device.fullName().equalsIgnoreCase(name.get())) {
          return device;
        }
      }
      checkHidden(listing, driver, name.get());
    }
    throw new CaptureException(
        Kind.NO_SUCH_DEVICE,
        "%s to %s there is %s."
            .formatted(
                name.map(wanted -> "No device is called \"" + wanted + "\";").orElse(driver + ":"),
                output ? "play to" : "record from",
                names(able)),
        "Give a name as `loopgauge devices` lists it.");
  }

  /** Says why a device that is there doesn't open. */
  private static void checkHidden(Listing listing, String driver, String name)
      throws CaptureException {
    for (String hidden : listing.hidden().keySet()) {
      if (name.equalsIgnoreCase(driver + ": " + hidden)) {
        throw listing.refusal(driver, hidden);
      }
    }
  }

  private static String names(List<DriverDevice> devices) {
    return devices.isEmpty()
        ? "none"
        : String.join(", ", devices.stream().map(device -> '"' + device.fullName() + '"').toList());
  }
}
