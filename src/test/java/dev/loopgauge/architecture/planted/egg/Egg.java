package dev.loopgauge.architecture.planted.egg;

import dev.loopgauge.architecture.planted.hen.Hen;

/** The other half of a planted knot across rooms; its nested class closes the ring. */
public final class Egg {
  /** What comes of it. */
  public static final class Chick {
    /** Grown up. */
    public Hen grown() {
      return new Hen();
    }
  }
}
