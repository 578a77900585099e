package dev.loopgauge.signal;

/**
 * A sound made to be found again: what a measurement plays.
 *
 * <p>Every stimulus renders to its own length at a peak of exactly 1.0 or a little below, starts
 * and ends at or near zero, and is the same, sample for sample, each time.
 */
public sealed interface Stimulus permits Click, ExponentialSweep, MaximumLengthSequence {
  /** The stimulus as samples with a peak of at most 1.0. */
  Signal render(SampleRate rate);
}
