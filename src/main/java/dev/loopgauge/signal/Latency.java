package dev.loopgauge.signal;

/**
 * A delay: a number of samples at a rate. It may be fractional, and negative where one signal leads
 * another.
 *
 * @param samples the delay in samples, finite
 * @param rate the rate that counts them
 */
public record Latency(double samples, SampleRate rate) {
  /**
   * Checks that the delay is a number.
   *
   * @throws IllegalArgumentException when {@code samples} is infinite or not a number
   */
  public Latency {
    if (!Double.isFinite(samples)) {
      throw new IllegalArgumentException("a delay must be finite, not " + samples);
    }
  }

  /** A delay given in seconds. */
  public static Latency ofSeconds(double seconds, SampleRate rate) {
    return new Latency(seconds * rate.hertz(), rate);
  }

  /** A delay given in milliseconds. */
  public static Latency ofMs(double ms, SampleRate rate) {
    return new Latency(ms * rate.hertz() / 1000, rate);
  }

  /** This delay in seconds. */
  public double seconds() {
    return samples / rate.hertz();
  }

  /** This delay in milliseconds. */
  public double ms() {
    return samples * 1000 / rate.hertz();
  }

  /**
   * This delay and another one after it.
   *
   * @throws IllegalArgumentException when the rates differ
   */
  public Latency plus(Latency other) {
    return new Latency(samples + sameRate(other).samples, rate);
  }

  /**
   * How much later this is than another.
   *
   * @throws IllegalArgumentException when the rates differ
   */
  public Latency minus(Latency other) {
    return new Latency(samples - sameRate(other).samples, rate);
  }

  private Latency sameRate(Latency other) {
    if (!rate.equals(other.rate)) {
      throw new IllegalArgumentException(
          "delays at " + rate.hertz() + " and " + other.rate.hertz() + " Hz do not add");
    }
    return other;
  }
}
