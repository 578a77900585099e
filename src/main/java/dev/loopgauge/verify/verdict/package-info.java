/**
 * One verdict over everything that was heard: delay, polarity, arrivals, lost sound, clocks, level,
 * response, clipping, the host's report and the picture. The first line on the screen, the journal,
 * the report and the exit code all take it from here.
 */
package dev.loopgauge.verify.verdict;
