package dev.loopgauge.cli.option;

import dev.loopgauge.job.live.DeviceChoice;
import dev.loopgauge.signal.SampleRate;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that say which devices to use, and how. What is left out comes from a profile. */
public class CardOptions {
  @Option(
      names = "--backend",
      paramLabel = "NAME",
      description = "java-sound, jack, drivers or simulated; `devices` lists what can be used.")
  private Optional<String> backend = Optional.empty();

  @Option(
      names = "--output",
      paramLabel = "NAME",
      description = "The device to play to; left out, the default one.")
  private Optional<String> output = Optional.empty();

  @Option(
      names = "--input",
      paramLabel = "NAME",
      description = "The device to record from; left out, the default one.")
  private Optional<String> input = Optional.empty();

  @Option(
      names = "--sample-rate",
      paramLabel = "HZ",
      converter = Converters.Rate.class,
      description = "The sample rate; left out, the device's, 48000 where it has a choice.")
  private Optional<SampleRate> rate = Optional.empty();

  @Option(
      names = "--buffer",
      paramLabel = "SAMPLES",
      converter = Converters.Count.class,
      description = "The device buffer; left out, the back end's choice.")
  private Optional<Integer> buffer = Optional.empty();

  /** What was chosen, with the channels to use. */
  final DeviceChoice choice(
      Optional<Integer> send,
      Optional<Integer> returned,
      Optional<Integer> referenceSend,
      Optional<Integer> referenceReturn) {
    return new DeviceChoice(
        backend, output, input, send, returned, referenceSend, referenceReturn, rate, buffer);
  }
}
