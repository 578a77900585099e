package dev.loopgauge.verify;

import java.util.List;
import java.util.OptionalInt;

/**
 * What to measure next, where one reading fits several causes alike.
 *
 * @param blockSize the block size to set the host to before measuring the same loop again; empty
 *     where no block size tells the causes apart
 * @param outcomes what that would read for each cause, in the order of the explanations
 * @param text why and how, one sentence
 */
public record ExtraMeasurement(OptionalInt blockSize, List<Outcome> outcomes, String text) {
  /**
   * What one cause would read.
   *
   * @param change the change, as command lines write it
   * @param predictedSamples the loop's delay in samples at the measured rate
   */
  public record Outcome(String change, double predictedSamples) {}

  /** Copies the list. */
  public ExtraMeasurement {
    outcomes = List.copyOf(outcomes);
  }
}
