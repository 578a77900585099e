package dev.loopgauge.capture;

/** How it is known that a device runs at the rate of its session, the surest first. */
public enum RateSource {
  /** The audio server says at which rate it runs. It is believed: it may be slower than a clock. */
  SERVER,
  /** The device states the rate as its own. A clock from outside may still make it another. */
  DEVICE,
  /** The system takes any rate and may convert it: nothing says at which the device runs. */
  ANY
}
