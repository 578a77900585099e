/**
 * Turns budgets and measurements into settings: what to add where paths meet, how sound stands to
 * its picture, and which block size, sample rate and routing keep every listener within limits.
 * Pure arithmetic on the results of {@code chain}.
 */
package dev.loopgauge.plan;
