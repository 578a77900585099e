package dev.loopgauge.audioserver;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One channel of a {@link DelayClient}.
 *
 * @param samples how late it is, in whole samples, 0 or more
 * @param gain what it multiplies by; negative inverts the polarity
 * @param statedSamples the latency that it states to the graph; empty to state none
 * @param limiter the library of a look-ahead limiter that the sound passes besides, if any
 */
public record DelayLine(
    int samples, double gain, OptionalInt statedSamples, Optional<String> limiter) {
  private static final Map<String, Float> NEVER_LIMITING =
      Map.of("Input gain", 0f, "Limit", 0f, "Release", 0.5f);

  /** A line that is a look-ahead limiter, set so that it lets pass what stays below full scale. */
  public static DelayLine limiting(String library) {
    return new DelayLine(0, 1, OptionalInt.empty(), Optional.of(library));
  }

  /** What the limiter says of itself, in samples. */
  public int limiterStates(int rateHz) {
    return startLimiter(rateHz).orElseThrow().statedSamples();
  }

  Optional<LadspaEffect> startLimiter(int rateHz) {
    return limiter.map(library -> new LadspaEffect(library, rateHz, NEVER_LIMITING));
  }

  /** A line of gain 1 that states no latency. */
  public static DelayLine of(int samples) {
    return new DelayLine(samples, 1, OptionalInt.empty(), Optional.empty());
  }

  /** This line with another gain. */
  public DelayLine withGain(double factor) {
    return new DelayLine(samples, factor, statedSamples, limiter);
  }

  /** This line stating a latency, true or not. */
  public DelayLine stating(int latencySamples) {
    return new DelayLine(samples, gain, OptionalInt.of(latencySamples), limiter);
  }

  /**
   * As one argument: {@code samples,gain,stated,limiter}, the last two empty where there is none.
   */
  String toArgument() {
    String stated = statedSamples.isPresent() ? "" + statedSamples.getAsInt() : "";
    return samples + "," + gain + "," + stated + "," + limiter.orElse("");
  }

  static DelayLine fromArgument(String argument) {
    String[] parts = argument.split(",", -1);
    return new DelayLine(
        Integer.parseInt(parts[0]),
        Double.parseDouble(parts[1]),
        parts[2].isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(parts[2])),
        Optional.of(parts[3]).filter(library -> !library.isEmpty()));
  }
}
