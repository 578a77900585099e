package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.stats.SelectedValue;

/**
 * The level of an arrival, freed of what noise does to it. The highest value of a correlation is
 * raised by half its variance over its height, for it was looked for; its logarithm is lowered by
 * as much (both derived, to the second order): in dB they cancel. What is left is that faint
 * arrivals are only told where noise raised them.
 *
 * @param db the level against the reference, in dB
 * @param uncertaintyDb its expanded uncertainty (k = 2), the larger of its two sides, in dB
 */
public record NoisyLevel(double db, double uncertaintyDb) {
  /**
   * Of an arrival.
   *
   * @param gain its gain as it was read
   * @param relative the gain's standard uncertainty as a part of it
   * @param least the gain from which on it would be told, as a part of it; 0 where there is none
   */
  public static NoisyLevel of(double gain, double relative, double least) {
    if (relative == 0 || least <= 0 || least > 1) {
      return new NoisyLevel(Decibels.ofFactor(gain), Uncertainty.levelDb(relative));
    }
    SelectedValue selected = SelectedValue.of(1 / relative, least / relative);
    double side = Math.max(selected.high() - selected.middle(), selected.middle() - selected.low());
    return new NoisyLevel(
        Decibels.ofFactor(gain * selected.middle() * relative),
        Uncertainty.levelDb(side / selected.middle() / Measurement.COVERAGE_FACTOR));
  }
}
