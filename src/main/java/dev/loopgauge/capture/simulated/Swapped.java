package dev.loopgauge.capture.simulated;

/**
 * The cables of two returns are swapped: each is in the other one's place.
 *
 * @param other the path whose return it is
 */
record Swapped(String other) implements RoutingFault {}
