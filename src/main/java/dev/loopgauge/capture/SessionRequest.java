package dev.loopgauge.capture;

import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;

/**
 * What a session shall open.
 *
 * @param output the device to play to; empty for the back end's own choice
 * @param input the device to record from; empty for the back end's own choice
 * @param sends the channels to play to, counted from 1, each once
 * @param returns the channels to record from, counted from 1, each once
 * @param rate the sample rate; empty for the one the device runs at, 48 kHz where it has a choice
 * @param bufferSamples the device buffer in samples, 0 for the back end's own choice
 */
public record SessionRequest(
    Optional<String> output,
    Optional<String> input,
    List<Integer> sends,
    List<Integer> returns,
    Optional<SampleRate> rate,
    int bufferSamples) {
  /**
   * Checks the channels and copies the lists.
   *
   * @throws IllegalArgumentException when a channel is below 1 or named twice, no return is named,
   *     or the buffer is negative
   */
  public SessionRequest {
    sends = channels("send", sends);
    returns = channels("return", returns);
    if (returns.isEmpty()) {
      throw new IllegalArgumentException("at least one return channel is needed");
    }
    if (bufferSamples < 0) {
      throw new IllegalArgumentException("a buffer can't have " + bufferSamples + " samples");
    }
  }

  /** The same with the buffer left to the back end. */
  public SessionRequest ofAnyBuffer() {
    return new SessionRequest(output, input, sends, returns, rate, 0);
  }

  private static List<Integer> channels(String what, List<Integer> channels) {
    for (int channel : channels) {
      if (channel < 1) {
        throw new IllegalArgumentException(
            what + " channels count from 1: there is no channel " + channel);
      }
    }
    if (channels.stream().distinct().count() != channels.size()) {
      throw new IllegalArgumentException("a " + what + " channel is named twice: " + channels);
    }
    return List.copyOf(channels);
  }
}
