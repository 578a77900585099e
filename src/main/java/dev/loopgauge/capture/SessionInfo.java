package dev.loopgauge.capture;

import dev.loopgauge.signal.SampleRate;

/**
 * What a session really opened.
 *
 * @param backend the back end's name
 * @param output the device played to
 * @param input the device recorded from
 * @param rate the rate both run at
 * @param bufferSamples the device buffer, or the audio server's block size, in samples
 * @param sampleLocked whether the offset between playing and recording is the same at each opening,
 *     so that a stored calibration holds
 * @param rateSource how it is known that the devices run at that rate
 * @param latestSamples by how many samples at the most what is recorded comes after what is played,
 *     converters left aside
 * @param alone whether its driver lets nobody else use the device meanwhile, so that other programs
 *     fall silent
 */
public record SessionInfo(
    String backend,
    String output,
    String input,
    SampleRate rate,
    int bufferSamples,
    boolean sampleLocked,
    RateSource rateSource,
    int latestSamples,
    boolean alone) {
  /**
   * How many device buffers may lie between playing and recording where nobody knows: one on either
   * side, and as much again in the system between. (Common practice, no source.)
   */
  private static final int BUFFERS_ON_THE_WAY = 4;

  /** A session that leaves the device to others as well. */
  public SessionInfo(
      String backend,
      String output,
      String input,
      SampleRate rate,
      int bufferSamples,
      boolean sampleLocked,
      RateSource rateSource,
      int latestSamples) {
    this(
        backend,
        output,
        input,
        rate,
        bufferSamples,
        sampleLocked,
        rateSource,
        latestSamples,
        false);
  }

  /** A session whose server says at which rate it runs. */
  public SessionInfo(
      String backend,
      String output,
      String input,
      SampleRate rate,
      int bufferSamples,
      boolean sampleLocked) {
    this(
        backend,
        output,
        input,
        rate,
        bufferSamples,
        sampleLocked,
        RateSource.SERVER,
        BUFFERS_ON_THE_WAY * bufferSamples);
  }

  /** The same through a driver that lets nobody else use the device meanwhile. */
  public SessionInfo takenAlone() {
    return new SessionInfo(
        backend, output, input, rate, bufferSamples, sampleLocked, rateSource, latestSamples, true);
  }
}
