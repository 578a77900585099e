package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.Explanation;

/** Delays as figures with units, in columns, with no digit beyond what was resolved. */
final class Figures {
  private static final int MOST_SAMPLE_DECIMALS = 3;
  private static final int MOST_MS_DECIMALS = 4;
  private static final int BUDGET_SAMPLE_DECIMALS = 2;
  private static final int BUDGET_MS_DECIMALS = 3;
  private static final int SAMPLES_COLUMNS = 25;
  private static final int MS_COLUMNS = 21;

  private Figures() {}

  /** The measured delay with its uncertainty: {@code 723.02 ± 0.04 samples 15.0629 ± 0.0009 ms}. */
  static String measured(Measurement m) {
    return columns(
        delay(m),
        Numbers.plusMinus(m.delay().ms(), m.uncertaintyMs(), MOST_MS_DECIMALS) + " ms",
        "");
  }

  /** The measured delay in samples with its uncertainty: {@code 723.02 ± 0.04 samples}. */
  static String delay(Measurement m) {
    return Numbers.plusMinus(m.delay().samples(), m.uncertaintySamples(), MOST_SAMPLE_DECIMALS)
        + " samples";
  }

  /** The predicted delay with its tolerance, where there is one. */
  static String predicted(Comparison c) {
    String samples = Numbers.brief(c.predicted().samples(), BUDGET_SAMPLE_DECIMALS);
    String tolerance =
        c.toleranceSamples() > 0
            ? " ± " + Numbers.brief(c.toleranceSamples(), BUDGET_SAMPLE_DECIMALS)
            : "";
    return columns(
        samples + tolerance + " samples",
        Numbers.plain(c.predicted().ms(), BUDGET_MS_DECIMALS) + " ms",
        allowed(c));
  }

  /** How much later than predicted, and as blocks where that is a whole number of them. */
  static String difference(Measurement m, Comparison c) {
    return columns(
        Numbers.signed(c.difference().samples(), sampleDecimals(m)) + " samples",
        Numbers.signed(c.difference().ms(), msDecimals(m)) + " ms",
        blocks(c.wholeBlocks().orElse(0)));
  }

  /**
   * What an explanation leaves unexplained: {@code (leaves +0.02 samples)}; nothing if none fits.
   */
  static String leaves(Measurement m, Explanation explanation) {
    return explanation.fits()
        ? " (leaves "
            + Numbers.signed(explanation.residualSamples(), sampleDecimals(m))
            + " samples)"
        : "";
  }

  private static String allowed(Comparison c) {
    return c.allowSamples() > 0
        ? Numbers.brief(c.allowSamples(), BUDGET_SAMPLE_DECIMALS) + " more allowed"
        : "";
  }

  /** A delay in words, without its sign: {@code 128 samples (2.67 ms)}. */
  static String inWords(Latency delay, int decimals) {
    return Numbers.brief(Math.abs(delay.samples()), decimals)
        + " samples ("
        + Numbers.plain(Math.abs(delay.ms()), 2)
        + " ms)";
  }

  /** How many decimals of a sample the measurement resolves, at most {@code 3}. */
  static int sampleDecimals(Measurement m) {
    return Numbers.decimalsFor(m.uncertaintySamples(), MOST_SAMPLE_DECIMALS);
  }

  private static int msDecimals(Measurement m) {
    return Numbers.decimalsFor(m.uncertaintyMs(), MOST_MS_DECIMALS);
  }

  private static String blocks(int blocks) {
    if (blocks == 0) {
      return "";
    }
    return Math.abs(blocks) == 1 ? blocks + " block" : blocks + " blocks";
  }

  private static String columns(String samples, String ms, String rest) {
    return (padded(samples, SAMPLES_COLUMNS) + padded(ms, MS_COLUMNS) + rest).stripTrailing();
  }

  private static String padded(String text, int columns) {
    return text + " ".repeat(Math.max(2, columns - text.length()));
  }
}
