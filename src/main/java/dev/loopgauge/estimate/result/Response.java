package dev.loopgauge.estimate.result;

import java.util.List;

/**
 * What comes back of an instant of sound: the level of the path's response along the delay axis, to
 * be drawn. Each value is the highest within its step, so that no arrival falls between two.
 *
 * @param firstSamples the delay that the first step starts with, in samples
 * @param stepSamples how long each step is, in samples, above 0
 * @param levelsDb the level of each step against the highest, in dB, from {@value #FLOOR_DB} to 0
 */
public record Response(double firstSamples, double stepSamples, List<Double> levelsDb) {
  /** Fainter than this is shown as this, in dB. */
  public static final double FLOOR_DB = -80;

  /**
   * Checks the step and copies the levels.
   *
   * @throws IllegalArgumentException when the step is not above 0, or a value is not finite
   */
  public Response {
    if (!(stepSamples > 0)) {
      throw new IllegalArgumentException("a step must be above 0 samples, not " + stepSamples);
    }
    boolean finite = true;
    for (double level : levelsDb) {
      finite &= Double.isFinite(level);
    }
    if (!finite || !Double.isFinite(firstSamples + stepSamples)) {
      throw new IllegalArgumentException("a response must be finite, not " + levelsDb);
    }
    levelsDb = List.copyOf(levelsDb);
  }

  /** The same response, later by some samples. */
  Response moved(double bySamples) {
    return new Response(firstSamples + bySamples, stepSamples, levelsDb);
  }
}
