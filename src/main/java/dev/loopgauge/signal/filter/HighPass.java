package dev.loopgauge.signal.filter;

import dev.loopgauge.signal.SampleRate;

/**
 * A Butterworth filter that passes what lies above its corner; 3.01 dB down there, and steeper by 6
 * dB an octave with each order.
 *
 * @param hertz the corner, 1 to 384000 Hz
 * @param order 1 to 4
 */
public record HighPass(double hertz, int order) implements Design {
  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException when a figure is out of range
   */
  public HighPass {
    Butterworth.check(hertz, order);
  }

  @Override
  public Filter at(SampleRate rate) {
    return Butterworth.highPass(hertz, order, rate);
  }
}
