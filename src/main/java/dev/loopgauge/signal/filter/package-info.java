/**
 * Causal filters as audio equipment has them: high-pass, low-pass, crossovers, equalisers and
 * all-passes. A {@link dev.loopgauge.signal.filter.Design} says in Hz and dB what is wanted; at a
 * sample rate it becomes a {@link dev.loopgauge.signal.filter.Filter}, which runs over sound and
 * tells its own response and group delay.
 */
package dev.loopgauge.signal.filter;
