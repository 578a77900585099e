package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import xt.audio.Enums.XtSystem;
import xt.audio.XtAudio;
import xt.audio.XtException;
import xt.audio.XtPlatform;
import xt.audio.XtService;

/** The drivers that XT-Audio knows. Its platform is opened once and stays open. */
final class XtDrivers implements Drivers {
  private static final String PROGRAM = "loopgauge";

  /** What people call them; those that play and record in one callback first. */
  private static final Map<XtSystem, String> NAMES = new LinkedHashMap<>();

  static {
    NAMES.put(XtSystem.ASIO, "ASIO");
    NAMES.put(XtSystem.JACK, "JACK");
    NAMES.put(XtSystem.WASAPI, "WASAPI");
    NAMES.put(XtSystem.ALSA, "ALSA");
    NAMES.put(XtSystem.PULSE_AUDIO, "PulseAudio");
    NAMES.put(XtSystem.DIRECT_SOUND, "DirectSound");
  }

  private final XtPlatform platform;

  private XtDrivers(XtPlatform platform) {
    this.platform = platform;
  }

  /** Loads the native code; all else has to come from the thread that did. */
  static XtDrivers load() {
    return new XtDrivers(XtAudio.init(PROGRAM, null));
  }

  @Override
  public List<String> names() {
    List<XtSystem> there = List.of(platform.getSystems());
    List<String> names = new ArrayList<>();
    for (Map.Entry<XtSystem, String> system : NAMES.entrySet()) {
      if (there.contains(system.getKey())) {
        names.add(system.getValue());
      }
    }
    return names;
  }

  @Override
  public Listing list(String driver) throws CaptureException {
    return read(driver, XtDevices::list);
  }

  @Override
  public DriverDevice counted(DriverDevice device) throws CaptureException {
    if (device.counted()) {
      return device;
    }
    Listing found = read(device.driver(), devices -> devices.counted(device));
    return found.devices().stream()
        .findFirst()
        .orElseThrow(() -> found.refusal(device.driver(), device.name()));
  }

  private <T> T read(String driver, Function<XtDevices, T> what) throws CaptureException {
    XtSystem system = system(driver);
    try {
      return what.apply(new XtDevices(platform.getService(system), system, driver));
    } catch (XtException e) {
      throw new CaptureException(
          Kind.BACKEND_UNUSABLE,
          XtFailure.nothing(e, driver),
          "Start the audio server, or plug the sound card in.");
    }
  }

  @Override
  public DriverStream open(StreamPlan plan, BlockHandler handler) throws CaptureException {
    XtService service = platform.getService(system(plan.input().driver()));
    try {
      return XtOpening.open(service, plan, handler);
    } catch (XtException e) {
      throw XtFailure.opening(e, plan);
    }
  }

  private static XtSystem system(String driver) {
    for (Map.Entry<XtSystem, String> system : NAMES.entrySet()) {
      if (system.getValue().equals(driver)) {
        return system.getKey();
      }
    }
    throw new IllegalArgumentException("no driver is called " + driver);
  }
}
