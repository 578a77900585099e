package dev.loopgauge.cli.command;

/** A command that with {@code --json} prints a document a line, a failure too. */
public interface LineByLine {}
