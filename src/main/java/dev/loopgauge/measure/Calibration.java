package dev.loopgauge.measure;

import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.time.Instant;
import java.util.Optional;

/**
 * What a patch cable in the place of the path takes: the sound card's own delay, which holds for
 * exactly the back end, devices, channels, rate and block size that it was measured with; or,
 * beside a reference cable, the skew of their two pairs of channels, which holds at any block size.
 *
 * @param backend the back end's name
 * @param output the device played to
 * @param input the device recorded from
 * @param rate the rate both ran at
 * @param bufferSamples the device buffer, or the audio server's block size, in samples
 * @param cable the send and the return that the cable joined
 * @param reference the same of the reference cable that it was compared with; empty where it was
 *     compared with what was played
 * @param delaySamples the delay found, finite: of a skew how much later the cable's sound comes
 *     than the reference's, negative where it comes first
 * @param uncertaintySamples its expanded uncertainty (k = 2), above 0
 * @param measuredAt when
 */
public record Calibration(
    String backend,
    String output,
    String input,
    SampleRate rate,
    int bufferSamples,
    ChannelPair cable,
    Optional<ChannelPair> reference,
    double delaySamples,
    double uncertaintySamples,
    Instant measuredAt) {
  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException when the delay isn't finite, or the uncertainty isn't a
   *     positive number
   */
  public Calibration {
    if (!Double.isFinite(delaySamples)) {
      throw new IllegalArgumentException("a calibration must be finite, not " + delaySamples);
    }
    if (!(uncertaintySamples > 0) || Double.isInfinite(uncertaintySamples)) {
      throw new IllegalArgumentException(
          "a calibration's uncertainty must be a positive number, not " + uncertaintySamples);
    }
  }

  /** A calibration of what a session opened, with a cable in the place of the rig. */
  public static Calibration of(
      SessionInfo session,
      Patching patching,
      double delaySamples,
      double uncertaintySamples,
      Instant measuredAt) {
    return new Calibration(
        session.backend(),
        session.output(),
        session.input(),
        session.rate(),
        session.bufferSamples(),
        patching.rig(),
        patching.reference(),
        delaySamples,
        uncertaintySamples,
        measuredAt);
  }

  /** The delay with its rate. */
  public Latency delay() {
    return new Latency(delaySamples, rate);
  }

  /** Whether it is the skew of what is patched in a session. */
  public boolean isSkewOf(Patching patching, SessionInfo session) {
    return reference.isPresent()
        && reference.equals(patching.reference())
        && cable.equals(patching.rig())
        && backend.equals(session.backend())
        && output.equals(session.output())
        && input.equals(session.input())
        && rate.equals(session.rate());
  }

  /**
   * Why this calibration, one without a reference, doesn't hold for a session.
   *
   * @param session what was opened
   * @param channels the send and return to be measured
   * @return the first thing that differs, as "made at 48000 Hz, not 44100"; empty when it holds
   */
  public Optional<String> differsFrom(SessionInfo session, ChannelPair channels) {
    return differs("with %s", backend, session.backend())
        .or(() -> differs("with the output \"%s\"", output, session.output()))
        .or(() -> differs("with the input \"%s\"", input, session.input()))
        .or(() -> differs("at %s Hz", rate.hertz(), session.rate().hertz()))
        .or(() -> differs("at a block of %s samples", bufferSamples, session.bufferSamples()))
        .or(() -> differs("from send %s", cable.send(), channels.send()))
        .or(() -> differs("to return %s", cable.ret(), channels.ret()));
  }

  private static Optional<String> differs(String made, Object then, Object now) {
    return then.equals(now)
        ? Optional.empty()
        : Optional.of("made " + made.formatted(then) + ", not " + now);
  }
}
