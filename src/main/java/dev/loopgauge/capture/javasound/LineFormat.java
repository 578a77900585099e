package dev.loopgauge.capture.javasound;

import dev.loopgauge.signal.SampleRate;
import javax.sound.sampled.AudioFormat;

/**
 * What a line is opened with: signed little-endian PCM.
 *
 * @param rate the sample rate
 * @param bits the bits of a sample: 16, 24 or 32
 * @param channels the channels of a frame
 * @param bufferFrames the buffer in frames
 */
record LineFormat(SampleRate rate, int bits, int channels, int bufferFrames) {
  AudioFormat toAudioFormat() {
    return new AudioFormat(rate.hertz(), bits, channels, true, false);
  }

  int bufferBytes() {
    return bufferFrames * toAudioFormat().getFrameSize();
  }
}
