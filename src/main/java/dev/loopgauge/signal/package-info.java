/**
 * Sampled sound and its units: sample rates, latencies, levels, signals, and the stimuli that a
 * measurement plays. Everything here is an immutable value built on the JDK alone, so that every
 * other package can speak in these types.
 */
package dev.loopgauge.signal;
