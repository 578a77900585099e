package dev.loopgauge.screen.web;

/** Who else may use the screen. */
public enum Sharing {
  /** Nobody: it is served to this computer alone. */
  NOBODY,
  /** Others on the network may look. */
  LOOK,
  /** Others may also begin measurements. */
  CONTROL
}
