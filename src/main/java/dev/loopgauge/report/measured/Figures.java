package dev.loopgauge.report.measured;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.measured.ComparisonRecord.ExplanationRecord;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;

/** Delays as figures with units, in columns, with no digit beyond what was resolved. */
final class Figures {
  private static final Pattern ZERO = Pattern.compile("[+-]?0(?:\\.0*)?");
  private static final int BUDGET_SAMPLE_DECIMALS = 2;
  private static final int BUDGET_MS_DECIMALS = 3;
  private static final int SAMPLES_COLUMNS = 25;
  private static final int MS_COLUMNS = 21;

  private Figures() {}

  /** The measured delay with its uncertainty: {@code 723.02 ± 0.04 samples 15.0629 ± 0.0009 ms}. */
  static String measured(ShownDelay delay) {
    return columns(delay.inSamples() + " samples", delay.inMs() + " ms", "");
  }

  /**
   * The predicted delay with its tolerance, where there is one.
   *
   * @param delay what was measured, at the same rate
   */
  static String predicted(ComparisonRecord c, ShownDelay delay) {
    String tolerance = brief(c.toleranceSamples());
    double predicted = c.predictedSamples().doubleValue();
    return columns(
        Numbers.brief(predicted, BUDGET_SAMPLE_DECIMALS)
            + (tolerance.isEmpty() ? "" : " ± " + tolerance)
            + " samples",
        Numbers.plain(delay.toMs(predicted), BUDGET_MS_DECIMALS) + " ms",
        "");
  }

  /** What is allowed besides; empty where nothing is. */
  static Optional<String> allowance(ComparisonRecord c) {
    String samples = brief(c.allowSamples());
    if (samples.isEmpty()) {
      return Optional.empty();
    }
    String unit = samples.equals("1") ? " sample" : " samples";
    return Optional.of("plus " + samples + unit + " of allowance (--allow-samples)");
  }

  /** Nothing where there is none. */
  private static String brief(Optional<BigDecimal> samples) {
    return samples.isPresent() && samples.get().signum() > 0
        ? Numbers.brief(samples.get().doubleValue(), BUDGET_SAMPLE_DECIMALS)
        : "";
  }

  /** How much later than predicted, and as blocks where that is a whole number of them. */
  static String difference(ComparisonRecord c, ShownDelay delay) {
    double samples = c.differenceSamples().doubleValue();
    return columns(
        Numbers.signed(samples, delay.sampleDecimals()) + " samples",
        Numbers.signed(delay.toMs(samples), delay.msDecimals()) + " ms",
        c.differenceBlocks().isPresent() ? blocks(c.differenceBlocks().get()) : "");
  }

  /** A cause, with how far it is off after its first sentence. */
  static String told(ExplanationRecord cause, ShownDelay delay) {
    String text = cause.text();
    int end = text.indexOf(". ");
    return end < 0
        ? text + leaves(cause, delay)
        : text.substring(0, end) + leaves(cause, delay) + text.substring(end);
  }

  /**
   * How far an explanation is off: {@code (off by +0.02 samples)} or {@code (fits exactly)};
   * nothing if none fits.
   */
  private static String leaves(ExplanationRecord explanation, ShownDelay delay) {
    if (explanation.residualSamples().isEmpty() || !explanation.fits()) {
      return "";
    }
    double residual = explanation.residualSamples().get().doubleValue();
    String off = Numbers.signed(residual, delay.sampleDecimals());
    return ZERO.matcher(off).matches() ? " (fits exactly)" : " (off by " + off + " samples)";
  }

  /** A delay in words, without its sign: {@code 128 samples (2.67 ms)}. */
  static String inWords(double samples, ShownDelay delay, int decimals) {
    return Numbers.brief(Math.abs(samples), decimals)
        + " samples ("
        + Numbers.plain(Math.abs(delay.toMs(samples)), 2)
        + " ms)";
  }

  /** {@code 2 blocks}. */
  static String blocks(int blocks) {
    return Math.abs(blocks) == 1 ? blocks + " block" : blocks + " blocks";
  }

  private static String columns(String samples, String ms, String rest) {
    return (padded(samples, SAMPLES_COLUMNS) + padded(ms, MS_COLUMNS) + rest).stripTrailing();
  }

  private static String padded(String text, int columns) {
    return text + " ".repeat(Math.max(2, columns - text.length()));
  }
}
