package dev.loopgauge.chain;

import dev.loopgauge.signal.Latency;

/**
 * What one stage adds under the conditions of its chain.
 *
 * @param name the stage
 * @param delay what it adds
 * @param toleranceSamples how far off that may be either way, in samples
 */
public record StageDelay(String name, Latency delay, double toleranceSamples) {}
