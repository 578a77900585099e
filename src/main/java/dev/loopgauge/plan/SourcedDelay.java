package dev.loopgauge.plan;

import dev.loopgauge.signal.Latency;

/**
 * How late a path is.
 *
 * @param delay from its source to its listener
 * @param source where the number comes from
 */
public record SourcedDelay(Latency delay, DelaySource source) {}
