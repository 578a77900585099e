package dev.loopgauge.cli.command;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavEncoding;
import dev.loopgauge.capture.file.WavWriter;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.report.rig.SignalDocument;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Writes a stimulus as a WAV file. */
@Command(
    sortOptions = false,
    description = {
      "Write a stimulus as a WAV file, to be played from a desk or a recorder.",
      "",
      "Play it into the path, record what comes back beside what was sent, and read both with"
          + " `loopgauge analyze`."
    },
    footer = {"  loopgauge signal --stimulus sweep --seconds 5 -o sweep.wav"})
public final class SignalCommand implements Subcommand {
  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      required = true,
      description = "The WAV file to write; it must not exist.")
  private Path file = Path.of("");

  @Option(
      names = "--stimulus",
      paramLabel = "KIND",
      defaultValue = "sweep",
      converter = Converters.Kind.class,
      description = "click, sweep or mls (${DEFAULT-VALUE}).")
  private StimulusKind kind = StimulusKind.SWEEP;

  @Option(
      names = "--seconds",
      paramLabel = "S",
      defaultValue = "1",
      converter = Converters.Positive.class,
      description = "How long it lasts (${DEFAULT-VALUE}).")
  private double seconds;

  @Option(
      names = "--level",
      paramLabel = "DBFS",
      defaultValue = "-20",
      converter = Converters.Finite.class,
      description = "Its peak, 0 dBFS at most (${DEFAULT-VALUE}).")
  private double levelDbfs;

  @Option(
      names = "--sample-rate",
      paramLabel = "HZ",
      defaultValue = "48000",
      converter = Converters.Rate.class,
      description = "Samples a second (${DEFAULT-VALUE}).")
  private SampleRate rate = new SampleRate(48_000);

  @Option(
      names = "--bits",
      paramLabel = "N",
      defaultValue = "24",
      description = "16, 24, or 32 for floating point (${DEFAULT-VALUE}).")
  private int bits;

  @Override
  public Answer answer() throws AudioFileException {
    WavEncoding encoding = encoding();
    Signal signal = signal();
    WavWriter.write(file, List.of(signal), encoding);
    return Answer.good(
        SignalDocument.of(file, kind, levelDbfs, signal.rate(), signal.length(), bits));
  }

  private Signal signal() {
    try {
      return new PlayedStimulus(kind, seconds, levelDbfs).render(rate);
    } catch (IllegalArgumentException e) {
      throw new UsageException(e.getMessage(), "choose another --seconds or --level");
    }
  }

  private WavEncoding encoding() {
    return switch (bits) {
      case 16 -> WavEncoding.PCM_16;
      case 24 -> WavEncoding.PCM_24;
      case 32 -> WavEncoding.FLOAT_32;
      default ->
          throw new UsageException(
              "expected --bits 16, 24 or 32, found " + bits, "24 suits most desks");
    };
  }
}
