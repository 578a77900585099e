package dev.loopgauge.verify;

/**
 * Something about a series that a person must know.
 *
 * @param code what it is, by the name that documents use
 * @param text what was found, one sentence with its figures
 * @param hint what to look at or try
 */
public record SeriesNote(String code, String text, String hint) {}
