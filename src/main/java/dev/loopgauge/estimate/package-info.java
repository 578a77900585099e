/**
 * From two signals to a delay and how far it can be trusted: correlation, arrivals, uncertainty,
 * findings. Pure arithmetic: no file, clock, random source or global state. Every formula names its
 * source where it stands.
 */
package dev.loopgauge.estimate;
