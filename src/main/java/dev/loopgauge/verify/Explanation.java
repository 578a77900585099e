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
 * @param cost how much less likely it is than the likeliest one, as a natural logarithm, 0 or more
 */
public record Explanation(
    String cause, String text, double predictedSamples, double residualSamples, double cost) {
  /**
   * Causes less far apart than this tie: the figures that rank them are judgement, and a factor of
   * 2.7 is no ground to prefer one. Common practice, no source.
   */
  private static final double TIED = 1;

  /** The cause that says that no change of the chain explains the difference. */
  public static final String NONE_FITS = "none-fits";

  /** The cause that says that the delay changes all the time. */
  public static final String DRIFT = "clocks-not-locked";

  /** The cause that says that the sound may not have come through the path. */
  public static final String CROSSTALK = "crosstalk?";

  /** Whether this is a change of the chain that fits, rather than word of something else. */
  public boolean fits() {
    return !cause.equals(NONE_FITS) && !cause.equals(DRIFT) && !cause.equals(CROSSTALK);
  }

  /** One that stands alone. */
  public Explanation(String cause, String text, double predictedSamples, double residualSamples) {
    this(cause, text, predictedSamples, residualSamples, 0);
  }

  /** Whether it is as likely as the likeliest one, for all that a reading can tell. */
  public boolean ties() {
    return cost < TIED;
  }

  static Explanation none(Latency predicted, Latency difference) {
    String size = PlainNumber.of(Math.abs(difference.samples()), 1);
    String text =
        difference.samples() > 0
            ? "something adds %s samples that the chain file doesn't state"
            : "%s samples that the chain file states are missing";
    return new Explanation(
        NONE_FITS,
        "No single or double change of the chain fits: "
            + String.format(Locale.ROOT, text, size)
            + ". Check it part by part: patch the return nearer to the send.",
        predicted.samples(),
        difference.samples());
  }

  /** The same, less likely than the likeliest by this. */
  Explanation costing(double more) {
    return new Explanation(cause, text, predictedSamples, residualSamples, more);
  }

  /** The strongest sound came at once, which no path does, and another one followed. */
  static Explanation crosstalk(Latency measured) {
    return new Explanation(
        CROSSTALK,
        "Crosstalk? The strongest sound arrives at 0.00 ms, ahead of another. Check whether the"
            + " send leaks into the return past the path.",
        measured.samples(),
        0);
  }

  static Explanation drift(Latency measured, double seconds) {
    return new Explanation(
        DRIFT,
        "The clocks are not locked: they drift apart by this much in "
            + PlainNumber.of(seconds, 1)
            + " s. Lock them first, then measure again.",
        measured.samples(),
        0);
  }
}
