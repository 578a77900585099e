package dev.loopgauge.estimate.result;

import java.util.Collection;
import java.util.function.ToDoubleFunction;

/**
 * How loud what is sent is, by three measures, in dBFS; negative infinity for digital silence.
 *
 * @param rmsDbfs over all of it
 * @param loudestDbfs rms over its loudest tenth of a second
 * @param peakDbfs its largest sample
 */
public record SentLevel(double rmsDbfs, double loudestDbfs, double peakDbfs) {
  /** Of one sound of which all measures are the same. */
  public static SentLevel even(double dbfs) {
    return new SentLevel(dbfs, dbfs, dbfs);
  }

  /**
   * The mean of each measure.
   *
   * @param levels at least one
   */
  public static SentLevel mean(Collection<SentLevel> levels) {
    return new SentLevel(
        mean(levels, SentLevel::rmsDbfs),
        mean(levels, SentLevel::loudestDbfs),
        mean(levels, SentLevel::peakDbfs));
  }

  /**
   * The largest of each measure.
   *
   * @param levels at least one
   */
  public static SentLevel loudest(Collection<SentLevel> levels) {
    return new SentLevel(
        largest(levels, SentLevel::rmsDbfs),
        largest(levels, SentLevel::loudestDbfs),
        largest(levels, SentLevel::peakDbfs));
  }

  private static double largest(Collection<SentLevel> levels, ToDoubleFunction<SentLevel> measure) {
    return levels.stream().mapToDouble(measure).max().orElseThrow();
  }

  private static double mean(Collection<SentLevel> levels, ToDoubleFunction<SentLevel> measure) {
    return levels.stream().mapToDouble(measure).average().orElseThrow();
  }

  /** By how much this is louder than another sound, by the measure that says most, in dB. */
  public double louderBy(SentLevel other) {
    return Math.max(
        rmsDbfs - other.rmsDbfs,
        Math.max(loudestDbfs - other.loudestDbfs, peakDbfs - other.peakDbfs));
  }

  /** By how much this is louder or softer than another sound, in dB. */
  public double awayFrom(SentLevel other) {
    return Math.max(louderBy(other), other.louderBy(this));
  }
}
