/** Jobs that play and record: one path, a soak, a series, a plug-in's states, a patch check. */
package dev.loopgauge.job.live;
