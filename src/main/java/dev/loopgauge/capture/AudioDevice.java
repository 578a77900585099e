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
 * @param rateSource whose rates these are: {@code ANY} where the system converts
 * @param sampleLocked whether the offset between playing and recording is the same at each opening,
 *     as {@link SessionInfo#sampleLocked} says of a session
 */
public record AudioDevice(
    String name,
    int sends,
    int returns,
    List<SampleRate> rates,
    RateSource rateSource,
    boolean sampleLocked) {
  /** A device whose server states its rates, and whose offset is another one at each opening. */
  public AudioDevice(String name, int sends, int returns, List<SampleRate> rates) {
    this(name, sends, returns, rates, RateSource.SERVER);
  }

  /** A device whose offset is another one at each opening. */
  public AudioDevice(
      String name, int sends, int returns, List<SampleRate> rates, RateSource rateSource) {
    this(name, sends, returns, rates, rateSource, false);
  }

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
