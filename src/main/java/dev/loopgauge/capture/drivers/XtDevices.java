package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.alsa.AlsaFormats;
import dev.loopgauge.capture.alsa.AlsaSharing;
import dev.loopgauge.capture.alsa.OwnFormats;
import dev.loopgauge.signal.SampleRate;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import xt.audio.Enums.XtEnumFlags;
import xt.audio.Enums.XtServiceCaps;
import xt.audio.Enums.XtSystem;
import xt.audio.XtDevice;
import xt.audio.XtDeviceList;
import xt.audio.XtException;
import xt.audio.XtService;

/**
 * The devices of one driver. ALSA and others list playing and recording apart, under one name:
 * these become one device. JACK's one device has every port of the server: each client becomes one.
 */
final class XtDevices {
  /** ALSA lists each device four times; the two ways of access reach the same sound. */
  private static final String MAPPED = " MMap)";

  private static final String DIRECTION = " \\((Input|Output) R/W\\)$";

  private static final String PLAYS = " (Output ";
  private static final String RECORDS = " (Input ";

  /** Plays to nobody and records silence, at once. */
  private static final String NOTHING = "null";

  private final XtService service;
  private final XtSystem system;
  private final String driver;
  private final boolean duplex;
  private final Map<String, DriverDevice> devices = new LinkedHashMap<>();
  private final Map<String, String> hidden = new LinkedHashMap<>();

  XtDevices(XtService service, XtSystem system, String driver) {
    this.service = service;
    this.system = system;
    this.driver = driver;
    this.duplex = service.getCapabilities().contains(XtServiceCaps.FULL_DUPLEX);
  }

  /** Those that open, and why others don't; those to be had alone uncounted. */
  Listing list() {
    XtException first = null;
    try (XtDeviceList list = service.openDeviceList(EnumSet.of(XtEnumFlags.ALL))) {
      for (int i = 0; i < list.getCount(); i++) {
        try {
          add(list, list.getId(i));
        } catch (XtException e) {
          first = first == null ? e : first;
        }
      }
    }
    if (devices.isEmpty() && first != null) {
      throw first;
    }
    return listing();
  }

  /** One device, opened to count its channels. */
  Listing counted(DriverDevice device) {
    try (XtDeviceList list = service.openDeviceList(EnumSet.of(XtEnumFlags.ALL))) {
      for (int i = 0; i < list.getCount(); i++) {
        String id = list.getId(i);
        if (id.equals(device.sends().id()) || id.equals(device.returns().id())) {
          countIfOpens(list, id);
        }
      }
    }
    return listing();
  }

  private void countIfOpens(XtDeviceList list, String id) {
    try {
      count(list, id);
    } catch (XtException e) {
      // Why not is among what is hidden.
    }
  }

  private Listing listing() {
    hidden.keySet().removeAll(devices.keySet());
    return new Listing(List.copyOf(devices.values()), hidden);
  }

  private static String plain(String name) {
    return name.replaceFirst(DIRECTION, "");
  }

  private void add(XtDeviceList list, String id) {
    String name = list.getName(id);
    if (name.endsWith(MAPPED) || plain(name).equals(NOTHING)) {
      return;
    }
    if (isAlone(list, id)) {
      put(uncounted(name, id));
    } else {
      count(list, id);
    }
  }

  /** Whether who opens it has it alone; nothing is opened to find that out. */
  private boolean isAlone(XtDeviceList list, String id) {
    return system == XtSystem.ALSA
        ? AlsaSharing.isAlone(plain(list.getName(id)))
        : XtKind.of(system, list, id) == XtKind.HARDWARE;
  }

  /** ALSA's names end with the direction, others serve for both. */
  private DriverDevice uncounted(String name, String id) {
    Ports ports = Ports.uncounted(id);
    return DriverDevice.uncounted(
        driver,
        plain(name),
        name.contains(RECORDS) ? Ports.NONE : ports,
        name.contains(PLAYS) ? Ports.NONE : ports,
        duplex);
  }

  private void count(XtDeviceList list, String id) {
    String plain = plain(list.getName(id));
    try (XtDevice device = service.openDevice(id)) {
      boolean alone = isAlone(list, id);
      XtKind kind = XtKind.of(system, list, id);
      Optional<SampleRate> rate = device.getMix().map(mix -> new SampleRate(mix.rate));
      Ports sends = new Ports(id, channels(device, true));
      Ports returns = new Ports(id, channels(device, false));
      if (system == XtSystem.JACK) {
        new XtClients(device, sends, returns)
            .forEach((client, out, in) -> put(of(client, out, in, rate, kind, alone)));
      } else {
        DriverDevice shown = of(plain, sends, returns, rate, kind, alone);
        put(kind == XtKind.MIXER && system == XtSystem.ALSA ? behindTheLayer(shown) : shown);
      }
    } catch (XtException e) {
      hidden.putIfAbsent(plain, XtFailure.reason(e));
      throw e;
    } catch (AssertionError e) {
      hidden.putIfAbsent(plain, "its driver broke");
    }
  }

  private static List<Integer> channels(XtDevice device, boolean output) {
    return IntStream.range(0, device.getChannelCount(output)).boxed().toList();
  }

  private DriverDevice of(
      String name,
      Ports sends,
      Ports returns,
      Optional<SampleRate> rate,
      XtKind kind,
      boolean alone) {
    return new DriverDevice(
        driver, name, sends, returns, rate, List.of(), kind.source(), duplex, alone, true);
  }

  /**
   * ALSA's layer takes any rate, and where it converts what it gives may be wrong: frames come at
   * the rate that was asked for, and the sound in them by a thousandth or more too fast.
   */
  private static DriverDevice behindTheLayer(DriverDevice device) {
    Optional<OwnFormats> own =
        AlsaFormats.of(device.name(), device.sends().count() > 0)
            .filter(formats -> formats.source() != RateSource.ANY);
    return own.map(formats -> device.runningAt(formats.rates(), formats.source())).orElse(device);
  }

  private void put(DriverDevice device) {
    devices.merge(device.name(), device, DriverDevice::joinedWith);
  }
}
