/**
 * From two signals to a delay and how far it can be trusted. Here are the ways in: one pair of
 * signals, channels against each other, a long recording window by window; the rooms hold the
 * steps. Pure arithmetic: no file, clock, random source or global state. Every formula names its
 * source where it stands.
 */
package dev.loopgauge.estimate;
