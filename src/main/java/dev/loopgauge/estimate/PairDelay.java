package dev.loopgauge.estimate;

import java.util.List;
import java.util.Optional;

/**
 * What two channels of one recording have in common.
 *
 * @param from one channel, counted from 1
 * @param to the other
 * @param measured how much later the sound is in {@code to}; empty when they have nothing in common
 *     by which it could be told
 * @param likeness their correlation at that delay, 0 for unrelated to 1 for copies of each other; 0
 *     without a delay
 * @param findings what to know besides
 */
public record PairDelay(
    int from, int to, Optional<Measurement> measured, double likeness, List<Finding> findings) {
  /**
   * Checks the likeness and copies the findings.
   *
   * @throws IllegalArgumentException when the likeness is not finite
   */
  public PairDelay {
    if (!Double.isFinite(likeness)) {
      throw new IllegalArgumentException("a likeness must be finite, not " + likeness);
    }
    findings = List.copyOf(findings);
  }
}
