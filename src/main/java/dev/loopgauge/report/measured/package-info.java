/**
 * Documents of what was measured: one path, many channels or pairs, a soak, a plug-in's states, a
 * patch check, a delay followed through time.
 */
package dev.loopgauge.report.measured;
