package dev.loopgauge.cli;

import dev.loopgauge.chain.ChainFormatException;
import dev.loopgauge.report.SeriesDocument;
import dev.loopgauge.report.SeriesStages;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.BlockSeries;
import dev.loopgauge.verify.CleanRun;
import dev.loopgauge.verify.FixedSplit;
import dev.loopgauge.verify.SeriesFit;
import dev.loopgauge.verify.SeriesFormatException;
import dev.loopgauge.verify.SeriesNotes;
import dev.loopgauge.verify.SeriesParser;
import dev.loopgauge.verify.SeriesReading;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes a host apart into so many blocks plus a fixed part. */
@Command(
    description = "Take a host apart into so many blocks plus a fixed part, from readings.",
    footer = {
      "",
      "FILE is a table in CSV; its first line names the columns: block-size, delay-ms",
      "or delay-samples, and if wanted uncertainty-samples, cpu-percent, dropouts.",
      "Three block sizes or more, far apart, so that a misread one can stand out."
    })
final class SeriesCommand implements Subcommand {
  @Parameters(paramLabel = "FILE", description = "The readings.")
  private Path file = Path.of("");

  @Option(
      names = "--sample-rate",
      paramLabel = "HZ",
      converter = Converters.Rate.class,
      description = "The rate that the rig ran at; left out, that of the chain file.")
  private Optional<SampleRate> rate = Optional.empty();

  @Mixin private final BudgetOptions budget = new BudgetOptions();

  @Option(
      names = "--write",
      paramLabel = "FILE",
      description = "Write the result as a chain file of two stages; it must not exist.")
  private Optional<Path> chainToWrite = Optional.empty();

  @Override
  public Answer answer() throws ChainFormatException, SeriesFormatException {
    Optional<ChosenPath> chosen = ChainFile.chosen(budget);
    SampleRate atRate = rate(chosen);
    String text =
        TextFile.read(
            file,
            "table of readings",
            SeriesParser.LONGEST_FILE,
            "write one: the first line is block-size,delay-ms and the next 64,7.2");
    List<SeriesReading> readings = SeriesParser.parse(text, file.toString(), atRate);
    SeriesFit fit = BlockSeries.fit(readings);
    chainToWrite.ifPresent(target -> write(target, fit));
    return Answer.good(
        new SeriesDocument(
            fit,
            SeriesNotes.of(fit),
            chosen.map(c -> FixedSplit.of(fit, c.chain(), c.path(), c.allowSamples())),
            CleanRun.of(readings),
            chainToWrite.map(Path::toString)));
  }

  private SampleRate rate(Optional<ChosenPath> chosen) {
    Optional<SampleRate> stated = chosen.map(c -> c.chain().rate());
    if (rate.isPresent() && stated.isPresent() && !rate.equals(stated)) {
      throw new UsageException(
          "--sample-rate %d, but the chain file says %d"
              .formatted(rate.get().hertz(), stated.get().hertz()),
          "which one did the rig run at? leave the option out, or mend the chain file");
    }
    return rate.or(() -> stated)
        .orElseThrow(
            () ->
                new UsageException(
                    "expected --sample-rate, found none", "add, for example, --sample-rate 48000"));
  }

  private void write(Path target, SeriesFit fit) {
    if (!SeriesStages.possible(fit)) {
      throw new UsageException(
          "no stages could have less than no delay, as this series has it",
          "look at it without --write, and check readings and sample rate");
    }
    TextFile.writeNew(target, SeriesStages.chainFile(fit, "block series of " + file));
  }
}
