package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.SessionRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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

  /** The plan for them. */
  StreamPlan plan() throws CaptureException {
    Optional<String> named = request.output().or(request::input);
    return named.isPresent() ? planOf(driverOf(named.get())) : planOfFirst();
  }

  /** The device that the request takes for itself; empty where it shares all with others. */
  Optional<String> alone() throws CaptureException {
    List<String> named =
        Stream.concat(request.output().stream(), request.input().stream()).toList();
    if (named.isEmpty()) {
      return plan().alone().map(DriverDevice::fullName);
    }
    String driver = driverOf(named.get(0));
    for (String alone : drivers.alone(driver)) {
      String full = driver + ": " + alone;
      if (named.stream().anyMatch(full::equalsIgnoreCase)) {
        return Optional.of(full);
      }
    }
    return Optional.empty();
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

  private String driverOf(String name) throws CaptureException {
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
    DriverDevice input = find(listing, driver, request.input().or(request::output), false);
    if (request.sends().isEmpty()) {
      return StreamPlan.of(request, input, input);
    }
    DriverDevice output = find(listing, driver, request.output().or(request::input), true);
    return StreamPlan.of(request, output, input);
  }

  private static DriverDevice find(
      Listing listing, String driver, Optional<String> name, boolean output)
      throws CaptureException {
    List<DriverDevice> able =
        listing.devices().stream().filter(device -> device.ports(output).count() > 0).toList();
    if (name.isEmpty() && !able.isEmpty()) {
      return able.get(0);
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
    for (Map.Entry<String, String> hidden : listing.hidden().entrySet()) {
      if (name.equalsIgnoreCase(driver + ": " + hidden.getKey())) {
        throw new CaptureException(
            Kind.BUSY,
            "\"%s\" doesn't open: %s.".formatted(name, hidden.getValue()),
            "Close other programs that use it, or plug it in, and try again.");
      }
    }
  }

  private static String names(List<DriverDevice> devices) {
    return devices.isEmpty()
        ? "none"
        : String.join(", ", devices.stream().map(device -> '"' + device.fullName() + '"').toList());
  }
}
