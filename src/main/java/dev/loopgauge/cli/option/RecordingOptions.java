package dev.loopgauge.cli.option;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.job.recorded.RecordedChannel;
import dev.loopgauge.job.recorded.Recordings;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that name two recordings and how to look for the delay between them. */
public final class RecordingOptions {
  private static final double LONGEST_DELAY = 60;

  @Option(
      names = "--reference",
      paramLabel = "FILE",
      description = "The recording of what was sent.")
  public Optional<Path> reference = Optional.empty();

  @Option(
      names = "--reference-channel",
      paramLabel = "N",
      defaultValue = "1",
      converter = Converters.Count.class,
      description = "Its channel (${DEFAULT-VALUE}).")
  int referenceChannel;

  @Option(
      names = "--return",
      paramLabel = "FILE",
      description = "The recording of what came back; left out, the same file.")
  public Optional<Path> returned = Optional.empty();

  @Option(
      names = "--return-channel",
      paramLabel = "N",
      converter = ChannelList.Converter.class,
      description = "Its channel (1, or 2 of the same file), or several: 2-64 or 2,5,7-9.")
  Optional<ChannelList> returnChannel = Optional.empty();

  @Option(
      names = "--max-delay",
      paramLabel = "SECONDS",
      defaultValue = "1",
      converter = Converters.Positive.class,
      description = "The longest delay to look for, up to 60 (${DEFAULT-VALUE}).")
  double maxDelaySeconds;

  /**
   * The longest delay to look for.
   *
   * @throws UsageException when it is out of range
   */
  public double maxDelay() {
    if (maxDelaySeconds > LONGEST_DELAY) {
      throw new UsageException(
          "expected --max-delay of at most 60 seconds, found " + maxDelaySeconds,
          "shift the recordings against each other first");
    }
    return maxDelaySeconds;
  }

  /** The channels of the return, counted from 1. */
  public List<Integer> returnChannels() {
    return returnChannels(returned);
  }

  private List<Integer> returnChannels(Optional<Path> back) {
    return returnChannel.map(ChannelList::numbers).orElse(List.of(back.isPresent() ? 1 : 2));
  }

  /**
   * The recording of what was sent.
   *
   * @throws UsageException when it isn't named
   */
  public Path sent() {
    return reference.orElseThrow(
        () ->
            new UsageException(
                "expected --reference FILE, found none",
                "name the recording of what was sent; `loopgauge analyze --help` shows more"));
  }

  /**
   * Both recordings, opened.
   *
   * @throws AudioFileException when one of them can't be read as WAV, or lacks a channel
   * @throws UsageException when there is no reference, or it is among the returns
   */
  public Recordings open() throws AudioFileException {
    return open(sent(), returned);
  }

  /** The same channels of other recordings; without a return, both of the first. */
  public Recordings open(Path sent, Optional<Path> back) throws AudioFileException {
    return new Recordings(
        new RecordedChannel(sent, referenceChannel), back.orElse(sent), returnChannels(back));
  }
}
