package dev.loopgauge.estimate;

/**
 * One copy of the reference in the return, as the arithmetic sees it.
 *
 * @param lag its delay in samples
 * @param gain its factor, with its sign
 */
record FittedArrival(double lag, double gain) {}
