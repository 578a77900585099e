package dev.loopgauge.capture;

import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;

/**
 * Something with channels to play to, to record from, or both.
 *
 * @param name the name that {@code --output} and {@code --input} take
 * @param channels how many channels it has; empty where nobody has counted them, because it would
 *     have to be opened and other programs may hold it alone
 * @param rates the rates it states, lowest first; empty when it states none
 * @param rateSource whose rates these are: {@code ANY} where the system converts
 * @param sampleLocked whether the offset between playing and recording is the same at each opening,
 *     as {@link SessionInfo#sampleLocked} says of a session
 */
public record AudioDevice(
    String name,
    Optional<Channels> channels,
    List<SampleRate> rates,
    RateSource rateSource,
    boolean sampleLocked) {
  /**
   * The channels of a device.
   *
   * @param sends how many it can play to, 0 or more
   * @param returns how many it can record from, 0 or more
   */
  public record Channels(int sends, int returns) {
    /**
     * Checks the counts.
     *
     * @throws IllegalArgumentException when a count is negative
     */
    public Channels {
      if (sends < 0 || returns < 0) {
        throw new IllegalArgumentException(
            "channel counts can't be negative: " + sends + " sends, " + returns + " returns");
      }
    }
  }

  /** A device whose server states its rates, and whose offset is another one at each opening. */
  public AudioDevice(String name, int sends, int returns, List<SampleRate> rates) {
    this(name, sends, returns, rates, RateSource.SERVER);
  }

  /** A device whose offset is another one at each opening. */
  public AudioDevice(
      String name, int sends, int returns, List<SampleRate> rates, RateSource rateSource) {
    this(name, sends, returns, rates, rateSource, false);
  }

  /** A device whose channels were counted. */
  public AudioDevice(
      String name,
      int sends,
      int returns,
      List<SampleRate> rates,
      RateSource rateSource,
      boolean sampleLocked) {
    this(name, Optional.of(new Channels(sends, returns)), rates, rateSource, sampleLocked);
  }

  /** A device that was not opened, so that nothing is known of its channels and rates. */
  public static AudioDevice uncounted(String name, RateSource rateSource, boolean sampleLocked) {
    return new AudioDevice(name, Optional.empty(), List.of(), rateSource, sampleLocked);
  }

  /** Copies the list. */
  public AudioDevice {
    rates = List.copyOf(rates);
  }
}
