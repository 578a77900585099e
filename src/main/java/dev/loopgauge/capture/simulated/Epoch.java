package dev.loopgauge.capture.simulated;

/**
 * A stretch of time in which the same faults hold.
 *
 * @param from its first frame
 * @param to the frame after its last
 * @param wiring the rig as these faults leave it
 */
record Epoch(long from, long to, Wiring wiring) {}
