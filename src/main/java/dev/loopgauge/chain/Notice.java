package dev.loopgauge.chain;

/**
 * Something in a valid chain file that may be a mistake.
 *
 * @param text what, with file, line and column; one line
 * @param hint what to try
 */
public record Notice(String text, String hint) {}
