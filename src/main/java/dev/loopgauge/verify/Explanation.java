package dev.loopgauge.verify;

import dev.loopgauge.signal.Latency;
import java.util.Locale;

/**
 * A change of the chain, or two, that would make its prediction meet the measurement.
 *
 * @param cause the kind of change, by the name that documents use; two are joined by +
 * @param text the change and what to check at the rig, one sentence
 * @param predictedSamples the loop's delay with that change, in samples at the measured rate
 * @param residualSamples what it leaves unexplained, measured less predicted
 */
public record Explanation(
    String cause, String text, double predictedSamples, double residualSamples) {
  /** The cause that says that no change of the chain explains the difference. */
  public static final String NONE_FITS = "none-fits";

  /** The cause that says that the delay changes all the time. */
  public static final String DRIFT = "clocks-not-locked";

  /** Whether this is a change of the chain that fits, rather than word of something else. */
  public boolean fits() {
    return !cause.equals(NONE_FITS) && !cause.equals(DRIFT);
  }

  static Explanation of(Hypothesis hypothesis, Latency measured) {
    double predicted = hypothesis.predictedSamples(measured.rate());
    return new Explanation(
        hypothesis.cause(), hypothesis.text(), predicted, measured.samples() - predicted);
  }

  static Explanation none(Latency predicted, Latency difference) {
    String size = Figure.of(Math.abs(difference.samples()), 1);
    String text =
        difference.samples() > 0
            ? "something delays the path by %s samples that the chain file doesn't state"
            : "the path is without %s samples that the chain file states";
    return new Explanation(
        NONE_FITS,
        "no change of the chain that was tried fits: "
            + String.format(Locale.ROOT, text, size)
            + ": check it part by part, with the return patched nearer to the send",
        predicted.samples(),
        difference.samples());
  }

  static Explanation drift(Latency measured, double seconds) {
    return new Explanation(
        DRIFT,
        "the clocks are not locked, and as fast as they drift apart that much comes together in "
            + Figure.of(seconds, 1)
            + " s: lock them first, then measure again",
        measured.samples(),
        0);
  }
}
