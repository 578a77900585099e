/** A command of the user's own that is run on each event of a watch. */
package dev.loopgauge.job.event;
