package dev.loopgauge.journal;

import dev.loopgauge.signal.SampleRate;

/**
 * What was measured with.
 *
 * @param backend the back end's name
 * @param output the device played to
 * @param input the device recorded from
 * @param rate the rate both ran at
 * @param blockSize the device buffer, or the audio server's block size, in samples, at least 1
 */
public record SoundCard(
    String backend, String output, String input, SampleRate rate, int blockSize) {
  /**
   * Checks the block size.
   *
   * @throws IllegalArgumentException when it is below 1
   */
  public SoundCard {
    if (blockSize < 1) {
      throw new IllegalArgumentException("a block holds 1 sample or more, not " + blockSize);
    }
  }
}
