package dev.loopgauge.estimate.result;

/**
 * When a delay changed.
 *
 * @param atSeconds the most likely moment, from the start of the stream
 * @param withinSeconds how far off that may be either way
 */
public record ChangeTime(double atSeconds, double withinSeconds) {}
