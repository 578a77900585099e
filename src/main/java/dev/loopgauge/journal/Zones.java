package dev.loopgauge.journal;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Optional;

/** Time zones by name. Newer computers know more of them than older ones. */
public final class Zones {
  private Zones() {}

  /** The zone of this name; empty where this computer doesn't know it. */
  public static Optional<ZoneId> known(String name) {
    try {
      return Optional.of(ZoneId.of(name));
    } catch (DateTimeException unknown) {
      return Optional.empty();
    }
  }
}
