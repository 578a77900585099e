package dev.loopgauge.cli.option;

import dev.loopgauge.job.recorded.RecordingChoice;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that name two recordings and how to look for the delay between them. */
public final class RecordingOptions {
  @Option(
      names = "--reference",
      paramLabel = "FILE",
      description = "The recording of what was sent.")
  public Optional<Path> reference = Optional.empty();

  @Option(
      names = "--reference-channel",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "Its channel (1).")
  private int referenceChannel = 1;

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
      converter = Converters.Positive.class,
      description = "The longest delay to look for, up to 60 (1).")
  private double maxDelaySeconds = 1;

  @Option(
      names = "--allow-same-signal",
      description = "Read channels that are sample for sample alike.")
  private boolean allowsSameSignal;

  /** What was chosen. */
  public RecordingChoice choice() {
    return new RecordingChoice(
        reference,
        referenceChannel,
        returned,
        returnChannel.isPresent() ? Optional.of(returnChannel.get().numbers()) : Optional.empty(),
        maxDelaySeconds,
        allowsSameSignal);
  }
}
