package dev.loopgauge.journal;

/**
 * The recording that a measurement was made from, kept beside the store.
 *
 * @param file its name within the folder of kept captures
 * @param digest SHA-256 of its bytes, 64 lower-case hexadecimal digits
 */
public record KeptCapture(String file, String digest) {}
