package dev.loopgauge.capture;

import java.util.List;

/** What a back end offers just now. */
public sealed interface Availability {
  /**
   * It can be used.
   *
   * @param devices at least one
   */
  record Usable(List<AudioDevice> devices) implements Availability {
    /** Copies the list. */
    public Usable {
      devices = List.copyOf(devices);
    }
  }

  /**
   * It can't be used.
   *
   * @param reason what is missing, one sentence
   * @param hint what to install or start, one sentence
   */
  record Unusable(String reason, String hint) implements Availability {}
}
