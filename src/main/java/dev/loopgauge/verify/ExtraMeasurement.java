package dev.loopgauge.verify;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What to measure next, where one reading fits several causes alike.
 *
 * @param blockSize the block size to set the host to before measuring the same loop again; empty
 *     where no block size tells the causes apart
 * @param outcomes what that would read for each cause, in the order of the explanations
 * @param measuredSamples what it did read, where it was made; the outcomes are then those it leaves
 * @param text why and how, or what came of it, one sentence
 */
public record ExtraMeasurement(
    OptionalInt blockSize, List<Outcome> outcomes, OptionalDouble measuredSamples, String text) {
  /**
   * What one cause would read.
   *
   * @param change the change, as command lines write it
   * @param predictedSamples the loop's delay in samples at the measured rate
   */
  public record Outcome(String change, double predictedSamples) {}

  /** The same once it was made. */
  ExtraMeasurement made(double readSamples, List<Outcome> left) {
    String read =
        String.format(
            Locale.ROOT,
            "measured again at a block of %d: %s samples, ",
            blockSize.orElseThrow(),
            PlainNumber.of(readSamples, 1));
    return new ExtraMeasurement(
        blockSize,
        left,
        OptionalDouble.of(readSamples),
        left.isEmpty()
            ? read + "which none of these causes gives"
            : read + "as with " + String.join(" or ", left.stream().map(Outcome::change).toList()));
  }

  /** Copies the list. */
  public ExtraMeasurement {
    outcomes = List.copyOf(outcomes);
  }
}
