package dev.loopgauge.estimate.result;

import java.util.List;
import java.util.Optional;

/**
 * What two channels of one recording have in common.
 *
 * @param from one channel, counted from 1
 * @param to the other
 * @param measured how much later the sound is in {@code to}; empty when they have nothing in common
 *     by which it could be told
 * @param coefficient their correlation at that delay, 0 for unrelated to 1 for copies of each
 *     other; 0 without a delay
 * @param findings what to know besides
 */
public record PairDelay(
    int from, int to, Optional<Measurement> measured, double coefficient, List<Finding> findings) {
  /**
   * Checks the coefficient and copies the findings.
   *
   * @throws IllegalArgumentException when the coefficient is not finite
   */
  public PairDelay {
    if (!Double.isFinite(coefficient)) {
      throw new IllegalArgumentException(
          "a correlation coefficient must be finite, not " + coefficient);
    }
    findings = List.copyOf(findings);
  }
}
