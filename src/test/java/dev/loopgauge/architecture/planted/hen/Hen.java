package dev.loopgauge.architecture.planted.hen;

import dev.loopgauge.architecture.planted.egg.Egg;

/** One half of a planted knot across rooms. */
public final class Hen {
  /** What she lays. */
  public Egg lays() {
    return new Egg();
  }
}
