/** The documents of a watch: a line for each state and event, and the summary at its end. */
package dev.loopgauge.report.watch;
