/**
 * Jobs on recordings: one return or many, pairs, a delay followed through time, a block series from
 * files.
 */
package dev.loopgauge.job.recorded;
