package dev.loopgauge.capture.simulated;

/** Something that is wrong with the simulated rig, so that one can see what a measurement says. */
public sealed interface Fault permits ChainFault, SoundFault, CardFault, RoutingFault {}
