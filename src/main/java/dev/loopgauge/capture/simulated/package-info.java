/**
 * A rig in numbers, for trying everything out without a sound card: the paths of a chain file, each
 * from its send to its return, and a straight cable beside them. Like a real card, it has a delay
 * of its own that changes from session to session, and a noise floor; {@link
 * dev.loopgauge.capture.simulated.Fault} says what else is wrong. The same seed gives the same
 * samples.
 */
package dev.loopgauge.capture.simulated;
