package dev.loopgauge.estimate.spectrum;

/**
 * One arrival of the reference in the return, as the arithmetic sees it.
 *
 * @param lag its delay in samples
 * @param gain its factor, with its sign
 */
public record FittedArrival(double lag, double gain) {}
