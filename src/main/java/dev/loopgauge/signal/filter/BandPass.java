package dev.loopgauge.signal.filter;

import dev.loopgauge.signal.Limits;
import dev.loopgauge.signal.SampleRate;

/**
 * Passes a band: a Butterworth high-pass and a Butterworth low-pass of fourth order, one after the
 * other.
 *
 * @param lowHz the high-pass's corner, 1 to 384000 Hz
 * @param highHz the low-pass's corner, not below the other
 */
public record BandPass(double lowHz, double highHz) implements Design {
  /** What a telephone carries: 300 to 3400 Hz (ITU-T G.712, from memory). */
  public static final BandPass TELEPHONE = new BandPass(300, 3400);

  /** What a subwoofer plays: 30 to 90 Hz (common practice, no source). */
  public static final BandPass SUBWOOFER = new BandPass(30, 90);

  private static final int ORDER = 4;

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException when a figure is out of range
   */
  public BandPass {
    Limits.check("the lower corner", lowHz, Prototype.LOWEST_HZ, Prototype.HIGHEST_HZ, "Hz");
    Limits.check("the upper corner", highHz, lowHz, Prototype.HIGHEST_HZ, "Hz");
  }

  @Override
  public Filter at(SampleRate rate) {
    return Cascade.of(
        Butterworth.highPass(lowHz, ORDER, rate), Butterworth.lowPass(highHz, ORDER, rate));
  }
}
