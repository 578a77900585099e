/** Jobs around the journal: keeping what was measured, and putting a report together. */
package dev.loopgauge.job.kept;
