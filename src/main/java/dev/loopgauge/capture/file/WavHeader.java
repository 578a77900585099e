package dev.loopgauge.capture.file;

/**
 * Where the samples of a WAV file lie.
 *
 * @param format what they are
 * @param dataStart the byte at which the first one starts
 * @param frames how many there are of each channel, at least 1
 */
record WavHeader(WavFormat format, long dataStart, long frames) {}
