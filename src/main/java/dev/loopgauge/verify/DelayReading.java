package dev.loopgauge.verify;

import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.estimate.Method;
import dev.loopgauge.signal.Latency;

/**
 * A delay to be compared with a budget.
 *
 * @param uncertaintySamples its expanded uncertainty, k = 2, in samples
 * @param open whether no verdict may follow: the sound card's own delay is in it, or another
 *     arrival may be the path
 */
record DelayReading(Latency delay, double uncertaintySamples, boolean open) {
  /** The delay of a measurement. */
  static DelayReading of(Measurement measured) {
    return new DelayReading(
        measured.delay(),
        measured.uncertaintySamples(),
        measured.method() == Method.UNCALIBRATED || measured.ambiguous());
  }
}
