package dev.loopgauge.capture;

import dev.loopgauge.signal.SampleRate;
import java.util.List;

/**
 * Something with channels to play to, to record from, or both.
 *
 * @param name the name that {@code --output} and {@code --input} take
 * @param sends how many channels it can play to, 0 or more
 * @param returns how many channels it can record from, 0 or more
 * @param rates the rates it states, lowest first; empty when it states none
 */
public record AudioDevice(String name, int sends, int returns, List<SampleRate> rates) {
  /**
   * Checks the counts and copies the list.
   *
   * @throws IllegalArgumentException when a count is negative
   */
  public AudioDevice {
    if (sends < 0 || returns < 0) {
      throw new IllegalArgumentException(
          "channel counts can't be negative: " + sends + " sends, " + returns + " returns");
    }
    rates = List.copyOf(rates);
  }
}
