/** The screen: streams, colour, progress, what a failure says, and the exit codes. */
package dev.loopgauge.cli.terminal;
