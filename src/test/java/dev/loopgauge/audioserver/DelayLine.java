package dev.loopgauge.audioserver;

import java.util.OptionalInt;

/**
 * One channel of a {@link DelayClient}.
 *
 * @param samples how late it is, in whole samples, 0 or more
 * @param gain what it multiplies by; negative inverts the polarity
 * @param statedSamples the latency that it states to the graph; empty to state none
 */
public record DelayLine(int samples, double gain, OptionalInt statedSamples) {
  /** A line of gain 1 that states no latency. */
  public static DelayLine of(int samples) {
    return new DelayLine(samples, 1, OptionalInt.empty());
  }

  /** This line with another gain. */
  public DelayLine withGain(double factor) {
    return new DelayLine(samples, factor, statedSamples);
  }

  /** This line stating a latency, true or not. */
  public DelayLine stating(int latencySamples) {
    return new DelayLine(samples, gain, OptionalInt.of(latencySamples));
  }

  /** As one argument: {@code samples/gain} or {@code samples/gain/stated}. */
  String toArgument() {
    String stated = statedSamples.isPresent() ? "/" + statedSamples.getAsInt() : "";
    return samples + "/" + gain + stated;
  }

  static DelayLine fromArgument(String argument) {
    String[] parts = argument.split("/", -1);
    DelayLine line = of(Integer.parseInt(parts[0])).withGain(Double.parseDouble(parts[1]));
    return parts.length == 3 ? line.stating(Integer.parseInt(parts[2])) : line;
  }
}
