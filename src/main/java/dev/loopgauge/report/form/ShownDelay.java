package dev.loopgauge.report.form;

/**
 * A measured delay as it is shown, with no digit beyond what was resolved.
 *
 * @param samples the delay in samples
 * @param uncertaintySamples its expanded uncertainty in samples, 0 or more; with 0 there are as
 *     many decimals as ever
 * @param rateHz the sample rate
 * @param uncalibrated whether the sound card's own delay is in it: then no ± is shown, since nobody
 *     knows how far the path's delay is off
 */
public record ShownDelay(
    double samples, double uncertaintySamples, double rateHz, boolean uncalibrated) {
  private static final int MOST_SAMPLE_DECIMALS = 3;
  private static final int MOST_MS_DECIMALS = 4;

  /** A delay without the sound card's own. */
  public ShownDelay(double samples, double uncertaintySamples, double rateHz) {
    this(samples, uncertaintySamples, rateHz, false);
  }

  /** Samples at this rate in ms. */
  public double toMs(double count) {
    return count * 1000 / rateHz;
  }

  /** The delay in ms. */
  public double ms() {
    return toMs(samples);
  }

  /** {@code 723.02 ± 0.04}; {@code 723.02} where it is uncalibrated. */
  public String inSamples() {
    return uncalibrated ? bareSamples() : bareSamples() + " ± " + uncertainty();
  }

  /** {@code 15.0629 ± 0.0009}; {@code 15.0629} where it is uncalibrated. */
  public String inMs() {
    return uncalibrated
        ? bareMs()
        : bareMs() + " ± " + Numbers.plainUp(toMs(uncertaintySamples), msDecimals());
  }

  /** {@code 723.02}, in samples. */
  public String bareSamples() {
    return Numbers.plain(samples, sampleDecimals());
  }

  /** {@code 15.0629}, in ms. */
  public String bareMs() {
    return Numbers.plain(ms(), msDecimals());
  }

  /** {@code 0.04}, in samples; a dash where it is uncalibrated. */
  public String uncertainty() {
    return uncalibrated ? "-" : Numbers.plainUp(uncertaintySamples, sampleDecimals());
  }

  /** How many decimals of a sample are resolved. */
  public int sampleDecimals() {
    return decimals(uncertaintySamples, MOST_SAMPLE_DECIMALS);
  }

  /** How many decimals of a millisecond are resolved. */
  public int msDecimals() {
    return decimals(toMs(uncertaintySamples), MOST_MS_DECIMALS);
  }

  private static int decimals(double uncertainty, int most) {
    return uncertainty > 0 ? Numbers.decimalsFor(uncertainty, most) : most;
  }
}
