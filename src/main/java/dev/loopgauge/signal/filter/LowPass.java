package dev.loopgauge.signal.filter;

import dev.loopgauge.signal.SampleRate;

/**
 * A Butterworth filter that passes what lies below its corner; 3.01 dB down there, and steeper by 6
 * dB an octave with each order.
 *
 * @param hertz the corner, 1 to 384000 Hz
 * @param order 1 to 4
 */
public record LowPass(double hertz, int order) implements Design {
  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException when a figure is out of range
   */
  public LowPass {
    Butterworth.check(hertz, order);
  }

  @Override
  public Filter at(SampleRate rate) {
    return Butterworth.lowPass(hertz, order, rate);
  }
}
