package dev.loopgauge.architecture.planted.ring;

/** The other half of a planted knot within a room. */
public interface Right {
  /** What is on the other side. */
  Left[] others();
}
