package dev.loopgauge.chain;

import dev.loopgauge.signal.SampleRate;
import java.util.Optional;

/**
 * What a stated delay must know to become samples.
 *
 * @param rate the word clock
 * @param blockSize samples the host computes at a time, 1 to {@value #LARGEST_BLOCK}
 * @param airTemperatureC the air between loudspeaker and listener, in degrees C, as {@link Air}
 *     covers it
 * @param frameRate the rate of the picture whose stages are counted; empty for sound
 */
public record Conditions(
    SampleRate rate, int blockSize, double airTemperatureC, Optional<FrameRate> frameRate) {
  /** The largest block accepted, in samples: beyond any host, over a second at 48 kHz. */
  public static final int LARGEST_BLOCK = 65_536;

  /**
   * Checks the block size and the temperature.
   *
   * @throws IllegalArgumentException when either is out of range
   */
  public Conditions {
    checkBlockSize(blockSize);
    Air.metresPerSecond(airTemperatureC);
  }

  static void checkBlockSize(int blockSize) {
    if (blockSize < 1 || blockSize > LARGEST_BLOCK) {
      throw new IllegalArgumentException(
          "block size must be 1 to " + LARGEST_BLOCK + " samples, not " + blockSize);
    }
  }

  /** A distance in air as a delay, in samples. */
  double samplesOfAir(double metres) {
    return metres / Air.metresPerSecond(airTemperatureC) * rate.hertz();
  }
}
