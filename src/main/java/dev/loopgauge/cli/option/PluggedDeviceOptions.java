package dev.loopgauge.cli.option;

import dev.loopgauge.job.live.DeviceChoice;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that say where to play and record one path. */
public final class PluggedDeviceOptions extends DeviceOptions {
  @Option(
      names = "--send",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "The channel that feeds the path, counted from 1.")
  private Optional<Integer> send = Optional.empty();

  @Option(
      names = "--return",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "The channel that the path comes back on.")
  private Optional<Integer> returned = Optional.empty();

  @Override
  DeviceChoice choice() {
    return choice(send, returned);
  }
}
