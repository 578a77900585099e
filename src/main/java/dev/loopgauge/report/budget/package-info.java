/**
 * Documents of what is predicted: each path's budget against its listener, what-if changes, mixes,
 * pictures.
 */
package dev.loopgauge.report.budget;
