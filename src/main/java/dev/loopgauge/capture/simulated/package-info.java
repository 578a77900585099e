/**
 * A rig in numbers, for trying everything out without a sound card: send 1 runs through a straight
 * cable to return 1, send 2 through the path of a chain file to return 2. Like a real card, it has
 * a delay of its own that changes from session to session, and a noise floor; {@link
 * dev.loopgauge.capture.simulated.Fault} says what else is wrong. The same seed gives the same
 * samples.
 */
package dev.loopgauge.capture.simulated;
