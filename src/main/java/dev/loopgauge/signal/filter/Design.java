package dev.loopgauge.signal.filter;

import dev.loopgauge.signal.SampleRate;

/** What a filter shall do, in Hz and dB, whatever the sample rate. */
public sealed interface Design
    permits AllPass, BandPass, Crossover, HighPass, LowPass, Peak, Shelf {
  /**
   * The filter at a sample rate.
   *
   * @throws IllegalArgumentException when a corner doesn't lie below half that rate
   */
  Filter at(SampleRate rate);
}
