/** Jobs on a chain file: its budget, what to choose, and what to dial in. */
package dev.loopgauge.job.planned;
