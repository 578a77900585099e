package dev.loopgauge.cli.option;

import dev.loopgauge.job.live.DeviceChoice;
import dev.loopgauge.job.live.LiveChoice;
import dev.loopgauge.job.live.StimulusChoice;
import dev.loopgauge.signal.SampleRate;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Where the screen plays and records, and what it keeps results under. */
public final class ScreenOptions {
  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description = "A kept profile; other options overrule what it says.")
  private Optional<String> profile = Optional.empty();

  @Option(
      names = "--backend",
      paramLabel = "NAME",
      description = "java-sound, jack or simulated; `devices` lists what can be used.")
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

  @Option(
      names = "--journal",
      paramLabel = "FILE",
      arity = "0..1",
      fallbackValue = "",
      description =
          "The journal to keep results in: FILE or jdbc:postgresql://HOST/DATABASE (what"
              + " LOOPGAUGE_JOURNAL names, else the default one).")
  private Optional<String> journal = Optional.empty();

  @Option(
      names = "--show",
      paramLabel = "NAME",
      description = "The show to keep results under; the page asks for it otherwise.")
  private Optional<String> show = Optional.empty();

  /** What to play and record, and where. */
  public LiveChoice live() {
    return new LiveChoice(
        profile,
        new DeviceChoice(
            backend,
            output,
            input,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            rate,
            buffer),
        StimulusChoice.NONE);
  }

  /** The journal. */
  public Optional<String> journal() {
    return journal.filter(place -> !place.isEmpty());
  }

  /** The show. */
  public Optional<String> show() {
    return show;
  }
}
