package dev.loopgauge.capture;

/**
 * The latency that the server's graph reports for a port: what the programs and drivers in between
 * have stated, whether it is true or not. The two ends differ where ways of different latency meet.
 *
 * @param minSamples the shortest way, in samples
 * @param maxSamples the longest way, in samples
 */
public record PortLatency(int minSamples, int maxSamples) {}
