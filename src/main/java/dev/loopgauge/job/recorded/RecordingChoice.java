package dev.loopgauge.job.recorded;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.estimate.reading.LongestDelay;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.signal.SameSamples;
import dev.loopgauge.signal.Samples;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Two recordings, and how to look for the delay between them.
 *
 * @param reference the recording of what was sent
 * @param referenceChannel its channel, counted from 1
 * @param returned the recording of what came back; empty for the same file
 * @param returnChannels its channels, counted from 1; empty for 1, or 2 of the same file
 * @param maxDelaySeconds the longest delay to look for
 * @param allowsSameSignal whether reference and return may be sample for sample alike
 */
public record RecordingChoice(
    Optional<Path> reference,
    int referenceChannel,
    Optional<Path> returned,
    Optional<List<Integer>> returnChannels,
    double maxDelaySeconds,
    boolean allowsSameSignal) {
  /**
   * The longest delay to look for.
   *
   * @throws UsageException when it is out of range
   */
  double maxDelay() {
    return checkedMaxDelay(maxDelaySeconds);
  }

  /**
   * A longest delay.
   *
   * @throws UsageException when it is out of range
   */
  static double checkedMaxDelay(double seconds) {
    if (seconds > LongestDelay.SECONDS) {
      throw new UsageException(
          "expected --max-delay of at most %d seconds, found %s"
              .formatted(LongestDelay.SECONDS, seconds),
          "shift the recordings against each other first");
    }
    return seconds;
  }

  /** The channels of the return, counted from 1. */
  List<Integer> channels() {
    return channels(returned);
  }

  private List<Integer> channels(Optional<Path> back) {
    return returnChannels.orElse(List.of(back.isPresent() ? 1 : 2));
  }

  /**
   * The recording of what was sent.
   *
   * @throws UsageException when it isn't named
   */
  Path sent() {
    if (reference.isEmpty()) {
      throw new UsageException(
          "expected --reference FILE, found none",
          "name the recording of what was sent; `loopgauge analyze --help` shows more");
    }
    return reference.get();
  }

  /** The recording that holds what came back, where one is named. */
  Optional<Path> recorded() {
    return returned.or(() -> reference);
  }

  /**
   * Both recordings, opened.
   *
   * @throws AudioFileException when one of them can't be read as WAV, or lacks a channel
   * @throws UsageException when there is no reference, or it is among the returns
   */
  Recordings open() throws AudioFileException {
    return open(sent(), returned);
  }

  /** Why a return can't be read: it is the reference itself. */
  Optional<Finding> sameSignal(Samples sent, Samples back) {
    return !allowsSameSignal && SameSamples.of(sent, back)
        ? Optional.of(SameSignal.FINDING)
        : Optional.empty();
  }

  /** The same channels of other recordings; without a return, both of the first. */
  Recordings open(Path sent, Optional<Path> back) throws AudioFileException {
    return new Recordings(
        new RecordedChannel(sent, referenceChannel), back.orElse(sent), channels(back));
  }
}
