package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.RateSource;
import xt.audio.Enums.XtDeviceCaps;
import xt.audio.Enums.XtSystem;
import xt.audio.XtDeviceList;

/** Who is behind a device. */
enum XtKind {
  SERVER,
  /** The hardware itself: at its own rate, and one program at a time. */
  HARDWARE,
  /** A layer of the system that mixes programs and converts. */
  MIXER;

  /** To tell that, ALSA opens the device for a moment. */
  static XtKind of(XtSystem system, XtDeviceList list, String id) {
    if (system == XtSystem.JACK) {
      return SERVER;
    }
    return system == XtSystem.ASIO || list.getCapabilities(id).contains(XtDeviceCaps.HW_DIRECT)
        ? HARDWARE
        : MIXER;
  }

  RateSource source() {
    return switch (this) {
      case SERVER -> RateSource.SERVER;
      case HARDWARE -> RateSource.DEVICE;
      case MIXER -> RateSource.ANY;
    };
  }
}
