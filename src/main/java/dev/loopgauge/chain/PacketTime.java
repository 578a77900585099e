package dev.loopgauge.chain;

import dev.loopgauge.signal.SampleRate;

/**
 * The packet time of an audio network, as AES67 names it: nominal at 48 kHz and its multiples. The
 * number of samples in a packet belongs to the name, and is kept at the sister rates of the 44.1
 * kHz family (AES67-2018 section 7.2, reported): a 1 ms packet is 48 samples at 48 and at 44.1 kHz,
 * where it lasts 48/44100 s. A packet holds whole samples, so 333 stands for 333 1/3 us: 16
 * samples.
 *
 * @param microseconds the nominal time, above 0 and at most {@value #LONGEST}
 */
public record PacketTime(double microseconds) {
  /** The longest packet accepted, in microseconds: a second, far beyond any network for stages. */
  public static final double LONGEST = 1e6;

  /**
   * Divides the rates of the 44.1 kHz family (11.025, 22.05, 44.1, 88.2 ... kHz) and no other's.
   */
  private static final int SISTER_FAMILY = 11_025;

  private static final int MAIN_FAMILY = 12_000;

  /**
   * Checks the range.
   *
   * @throws IllegalArgumentException when out of range
   */
  public PacketTime {
    if (!(microseconds > 0 && microseconds <= LONGEST)) {
      throw new IllegalArgumentException(
          "packet time must be above 0 and at most " + LONGEST + " us, not " + microseconds);
    }
  }

  /** How many samples one packet holds, at least 1. */
  public long samples(SampleRate rate) {
    int hertz = rate.hertz();
    int nominal = hertz % SISTER_FAMILY == 0 ? hertz / SISTER_FAMILY * MAIN_FAMILY : hertz;
    return Math.max(1, Math.round(microseconds * nominal / 1e6));
  }
}
