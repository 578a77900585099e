/** The commands: arguments to an options record, a job's document to the screen, an exit code. */
package dev.loopgauge.cli.command;
