/**
 * The commands: thin picocli classes that read arguments and files, wire the other packages
 * together, and choose the exit code. The one {@code System.exit} is in {@link
 * dev.loopgauge.cli.Main}.
 */
package dev.loopgauge.cli;
