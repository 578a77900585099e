package dev.loopgauge.verify;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.PureDelay;
import dev.loopgauge.signal.Latency;

/**
 * A delay to be compared with a budget: the pure one, which no filter explains, where it is known.
 *
 * @param uncertaintySamples its expanded uncertainty, k = 2, in samples
 * @param open whether no verdict may follow: the sound card's own delay is in it, or another
 *     arrival may be the path
 * @param leaks whether the strongest sound came at once and another one followed
 */
record DelayReading(Latency delay, double uncertaintySamples, boolean open, boolean leaks) {
  /** A sound that is no later than this, in ms, came past the path: 0.00 ms as it is told. */
  private static final double AT_ONCE_MS = 0.005;

  /** The strongest sound is itself among the arrivals, to within rounding. */
  private static final double LATER_SAMPLES = 1;

  /** The delay of a measurement. */
  static DelayReading of(Measurement measured) {
    PureDelay budgeted = measured.budgeted();
    return new DelayReading(
        new Latency(budgeted.samples(), measured.delay().rate()),
        budgeted.uncertaintySamples(),
        measured.method() == Method.UNCALIBRATED || measured.ambiguous(),
        leaks(measured));
  }

  private static boolean leaks(Measurement measured) {
    double samples = measured.delay().samples();
    return Math.abs(measured.delay().ms()) < AT_ONCE_MS
        && measured.arrivals().stream()
            .anyMatch(other -> other.delaySamples() > samples + LATER_SAMPLES);
  }
}
