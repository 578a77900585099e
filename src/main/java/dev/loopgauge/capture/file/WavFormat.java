package dev.loopgauge.capture.file;

import dev.loopgauge.signal.SampleRate;

/**
 * What is in the samples of a WAV file.
 *
 * @param rate the sample rate
 * @param channels how many channels, 1 to {@value #MOST_CHANNELS}
 * @param encoding how each sample lies in the file
 */
record WavFormat(SampleRate rate, int channels, WavEncoding encoding) {
  /** The most channels that a file may have: those of a MADI line (AES10, from memory). */
  static final int MOST_CHANNELS = 64;

  /**
   * Checks the number of channels.
   *
   * @throws IllegalArgumentException when out of range
   */
  WavFormat {
    if (channels < 1 || channels > MOST_CHANNELS) {
      throw new IllegalArgumentException(
          "a file must have 1 to " + MOST_CHANNELS + " channels, not " + channels);
    }
  }

  /** How many bytes a frame takes: one sample of every channel. */
  int frameBytes() {
    return channels * encoding.bytes();
  }
}
