package dev.loopgauge.cli.option;

import dev.loopgauge.job.live.DeviceChoice;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that say where to play and record. What is left out comes from a profile. */
public class DeviceOptions extends CardOptions {
  @Option(
      names = "--reference-send",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "The channel that a cable joins straight to --reference-return.")
  private Optional<Integer> referenceSend = Optional.empty();

  @Option(
      names = "--reference-return",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "The channel that this cable comes back on.")
  private Optional<Integer> referenceReturn = Optional.empty();

  /** What was chosen. */
  DeviceChoice choice() {
    return choice(Optional.empty(), Optional.empty());
  }

  /** The same for one path. */
  final DeviceChoice choice(Optional<Integer> send, Optional<Integer> returned) {
    return choice(send, returned, referenceSend, referenceReturn);
  }
}
