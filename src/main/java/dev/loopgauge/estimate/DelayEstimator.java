package dev.loopgauge.estimate;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds how much later a return is than its reference, and says how sure that is, or why it can't
 * be known.
 *
 * <p>The way: the correlation of both ({@link CrossSpectrum}) is largest at the delay ({@link
 * PeakSearch}); what the delayed and filtered reference leaves of the return ({@link Residual}) is
 * the noise, which gives the uncertainty; a peak that unrelated sound could give is refused.
 */
public final class DelayEstimator {
  /**
   * How many standard deviations the correlation must stand above what unrelated signals with the
   * same spectra give. Among 200,000 lags unrelated Gaussian noise passes 8 once in 4 * 10^9 times.
   */
  private static final double TRUSTED = 8;

  /** From here on something is there, though not enough to be placed. */
  private static final double SUSPECTED = 5.5;

  private final double maxDelaySeconds;

  /**
   * An estimator.
   *
   * @param maxDelaySeconds how far to look either way, above 0 and at most 60
   * @throws IllegalArgumentException when out of range
   */
  public DelayEstimator(double maxDelaySeconds) {
    if (!(maxDelaySeconds > 0 && maxDelaySeconds <= 60)) {
      throw new IllegalArgumentException(
          "the longest delay must be above 0 and at most 60 s, not " + maxDelaySeconds);
    }
    this.maxDelaySeconds = maxDelaySeconds;
  }

  /**
   * The delay of a path from one or more readings of it.
   *
   * @param readings at least one, all at one rate
   * @throws IllegalArgumentException when there is none or the rates differ
   */
  public Estimate estimate(List<Reading> readings) {
    if (readings.stream().map(Reading::rate).distinct().count() != 1) {
      throw new IllegalArgumentException(
          "readings must be of one rate, and at least one, not " + readings.size());
    }
    Optional<Finding> silence = CaptureChecks.silence(readings);
    if (silence.isPresent()) {
      return new Estimate.Refused(List.of(silence.get()));
    }
    return judge(new Analysis(readings, maxDelaySeconds));
  }

  private static Estimate judge(Analysis analysis) {
    List<Finding> findings = new ArrayList<>();
    CaptureChecks.clipping(analysis.readings()).ifPresent(findings::add);
    trust(analysis).ifPresent(findings::add);
    if (findings.stream().anyMatch(Finding::refuses)) {
      return new Estimate.Refused(findings);
    }
    Measurement measurement = measure(analysis);
    if (measurement.polarity() == Polarity.INVERTED) {
      findings.add(
          new Finding(
              FindingCode.INVERTED,
              false,
              "the return is inverted against the reference",
              "a polarity switch, a cable with crossed wires, or a stage that inverts"));
    }
    return new Estimate.Found(measurement, findings);
  }

  /** Why the number can't be trusted, if so. */
  private static Optional<Finding> trust(Analysis analysis) {
    double significance = analysis.significance();
    if (significance < SUSPECTED) {
      return Optional.of(
          new Finding(
              FindingCode.NO_RETURN,
              true,
              "the return holds nothing of the reference",
              "is the return the right channel? `measure --check-patch` finds it. Is the path"
                  + " muted?"));
    }
    if (significance < TRUSTED) {
      return Optional.of(
          new Finding(
              FindingCode.WEAK_RETURN,
              true,
              String.format(
                  Locale.ROOT,
                  "the return holds something like the reference, but too faint to place (%.1f dB"
                      + " against the rest)",
                  analysis.signalToNoiseDb()),
              "raise the send level or the input gain, use a longer sweep or more repeats, or"
                  + " quieten the room"));
    }
    return analysis
        .rival()
        .map(
            lag ->
                new Finding(
                    FindingCode.NO_REFERENCE,
                    true,
                    String.format(
                        Locale.ROOT,
                        "the reference repeats itself: the delay could as well be %.2f ms %s",
                        new Latency(Math.abs(lag), analysis.rate()).ms(),
                        lag > 0 ? "later" : "earlier"),
                    "use a sweep, or a passage of speech or music that changes"));
  }

  private static Measurement measure(Analysis analysis) {
    SampleRate rate = analysis.rate();
    double gain = analysis.gain();
    double delay = analysis.delaySamples();
    Arrival strongest = new Arrival(delay, Decibels.ofFactor(gain), Polarity.of(gain));
    return new Measurement(
        new Latency(delay, rate),
        new Uncertainty().with(analysis.standardUncertainty()).expanded(),
        strongest.polarity(),
        strongest.levelDb(),
        analysis.signalToNoiseDb(),
        Method.REFERENCED,
        analysis.readings().size(),
        OptionalDouble.empty(),
        List.of(strongest),
        List.of());
  }
}
