package dev.loopgauge.setup;

import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import java.util.Arrays;
import java.util.function.Function;

/** Values as they stand in files. Each throws IllegalArgumentException for a wrong one. */
final class Formats {
  private Formats() {}

  static SampleRate rate(String text) {
    return new SampleRate(Integer.parseInt(text));
  }

  static int size(String text) {
    int samples = Integer.parseInt(text);
    if (samples < 0) {
      throw new IllegalArgumentException("no size is below 0");
    }
    return samples;
  }

  static Function<String, ChannelPair> pairWith(int send) {
    return text -> new ChannelPair(send, Integer.parseInt(text));
  }

  static StimulusKind stimulus(String text) {
    return Arrays.stream(StimulusKind.values())
        .filter(kind -> kind.label().equals(text))
        .findFirst()
        .orElseThrow(NumberFormatException::new);
  }
}
