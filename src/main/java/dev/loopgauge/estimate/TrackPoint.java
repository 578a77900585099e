package dev.loopgauge.estimate;

import dev.loopgauge.signal.Latency;

/**
 * The delay at one moment of a long recording.
 *
 * @param atSeconds the middle of its window, counted from the start of the recording
 * @param delay how much later the return is than the reference
 * @param uncertaintySamples the expanded uncertainty of that, k = 2, in samples
 */
public record TrackPoint(double atSeconds, Latency delay, double uncertaintySamples) {}
