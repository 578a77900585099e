package dev.loopgauge.capture.javasound;

import be.tarsos.dsp.io.TarsosDSPAudioFloatConverter;
import be.tarsos.dsp.io.TarsosDSPAudioFormat;
import javax.sound.sampled.AudioFormat;

/**
 * Turns samples into the bytes of a line and back, by TarsosDSP's converter.
 *
 * <p>That converter wraps what is beyond full scale round to the other sign at 16 and 24 bits, so
 * samples are limited to full scale first. It cuts off towards zero instead of rounding, which
 * costs up to one step of the format and moves nothing in time.
 */
final class PcmConverter {
  private final TarsosDSPAudioFloatConverter converter;

  /**
   * A converter for lines of this format.
   *
   * @param format signed PCM, 16, 24 or 32 bits, tightly packed
   */
  PcmConverter(AudioFormat format) {
    this.converter =
        TarsosDSPAudioFloatConverter.getConverter(
            new TarsosDSPAudioFormat(
                format.getSampleRate(),
                format.getSampleSizeInBits(),
                format.getChannels(),
                true,
                format.isBigEndian()));
  }

  /** Fills {@code bytes} from its start; {@code samples} is limited to full scale in place. */
  void toBytes(float[] samples, byte[] bytes) {
    for (int i = 0; i < samples.length; i++) {
      samples[i] = Math.max(-1, Math.min(1, samples[i]));
    }
    converter.toByteArray(samples, samples.length, bytes);
  }

  /** Fills {@code samples} from the start of {@code bytes}. */
  void toSamples(byte[] bytes, float[] samples) {
    converter.toFloatArray(bytes, samples, samples.length);
  }
}
