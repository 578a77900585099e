package dev.loopgauge.verify;

import dev.loopgauge.signal.Latency;

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

  /** Whether this is a change that fits, rather than word that none does. */
  public boolean fits() {
    return !cause.equals(NONE_FITS);
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
            + text.formatted(size)
            + ": check it part by part, with the return patched nearer to the send",
        predicted.samples(),
        difference.samples());
  }
}
