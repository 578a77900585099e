package dev.loopgauge.estimate;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;

/**
 * One look at a path: what went in and what came back. Both start at the same instant; their
 * lengths may differ.
 *
 * @param reference the stimulus as played, or a recording of what went in
 * @param ret the return
 */
public record Reading(Signal reference, Signal ret) {
  /**
   * Checks that both have the same rate and hold something.
   *
   * @throws IllegalArgumentException when the rates differ or a signal is empty
   */
  public Reading {
    if (!reference.rate().equals(ret.rate())) {
      throw new IllegalArgumentException(
          "reference and return must have one rate, not "
              + reference.rate().hertz()
              + " and "
              + ret.rate().hertz()
              + " Hz");
    }
    if (reference.length() == 0 || ret.length() == 0) {
      throw new IllegalArgumentException(
          "reference and return must hold samples, not "
              + reference.length()
              + " and "
              + ret.length());
    }
  }

  /** The rate of both. */
  public SampleRate rate() {
    return reference.rate();
  }
}
