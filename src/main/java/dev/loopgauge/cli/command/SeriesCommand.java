package dev.loopgauge.cli.command;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.cli.option.BlockSizeList;
import dev.loopgauge.cli.option.BudgetOptions;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.LiveOptions;
import dev.loopgauge.cli.option.RigOptions;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.cli.wiring.Backends;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.TextFile;
import dev.loopgauge.job.live.Consent;
import dev.loopgauge.job.live.HostBlocks;
import dev.loopgauge.job.live.LiveSeries;
import dev.loopgauge.job.live.LiveTarget;
import dev.loopgauge.report.form.ErrorDocument;
import dev.loopgauge.report.series.SeriesDocument;
import dev.loopgauge.report.series.SeriesStages;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.BlockSeries;
import dev.loopgauge.verify.CleanRun;
import dev.loopgauge.verify.FixedSplit;
import dev.loopgauge.verify.SeriesFit;
import dev.loopgauge.verify.SeriesFormatException;
import dev.loopgauge.verify.SeriesNote;
import dev.loopgauge.verify.SeriesNotes;
import dev.loopgauge.verify.SeriesParser;
import dev.loopgauge.verify.SeriesReading;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Takes a host apart into so many blocks plus a fixed part. */
@Command(
    sortOptions = false,
    description = "Take a host apart into so many blocks plus a fixed part, from readings.",
    footer = {
      "",
      "FILE is a table in CSV; its first line names the columns: block-size, delay-ms",
      "or delay-samples, and if wanted uncertainty-samples, cpu-percent, dropouts.",
      "Three block sizes or more, far apart, so that a misread one can stand out.",
      "",
      "--live measures instead, as `measure` does: jack is set to each block size and",
      "back at the end, elsewhere you are asked to set the host."
    })
public final class SeriesCommand implements Subcommand {
  private static final BlockSizeList USUAL = new BlockSizeList(List.of(64, 128, 256, 512, 1024));

  private final Console console;
  private final Backends backends;

  @Spec private CommandSpec spec;

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "The readings.")
  private Optional<Path> file = Optional.empty();

  @Option(names = "--live", description = "Measure at each block size in turn.")
  private boolean isLive;

  @Option(
      names = "--block-sizes",
      paramLabel = "LIST",
      converter = BlockSizeList.Converter.class,
      description = "With --live: which (64,128,256,512,1024).")
  private Optional<BlockSizeList> sizes = Optional.empty();

  @Option(
      names = "--soak",
      paramLabel = "MINUTES",
      converter = Converters.Positive.class,
      description = "With --live: go on for so long at each, and count lost sound.")
  private Optional<Double> minutes = Optional.empty();

  @Option(names = "--yes", description = "With --live: play without asking first.")
  private boolean yes;

  @Mixin private final BudgetOptions budget = new BudgetOptions();

  @Option(
      names = "--write",
      paramLabel = "FILE",
      description = "Write the result as a chain file of two stages; it must not exist.")
  private Optional<Path> chainToWrite = Optional.empty();

  @Mixin private final LiveOptions live = new LiveOptions();
  @Mixin private final RigOptions rig = new RigOptions();

  /** A command on a console with back ends. */
  public SeriesCommand(Console console, Backends backends) {
    this.console = console;
    this.backends = backends;
  }

  @Override
  public Answer answer() throws Exception {
    if (isLive == file.isPresent()) {
      throw new UsageException(
          "expected a table of readings or --live, found " + (isLive ? "both" : "neither"),
          "name the table, or measure with --live and the options of `loopgauge measure`");
    }
    Optional<ChosenPath> chosen = ChainFile.chosen(budget);
    return isLive ? measured(chosen) : read(file.get(), chosen);
  }

  private Answer read(Path table, Optional<ChosenPath> chosen) throws SeriesFormatException {
    refuseLiveOptions();
    SampleRate atRate = rate(chosen);
    String text =
        TextFile.read(
            table,
            "table of readings",
            SeriesParser.LONGEST_FILE,
            "write one: the first line is block-size,delay-ms and the next 64,7.2");
    List<SeriesReading> readings = SeriesParser.parse(text, table.toString(), atRate);
    return Answer.good(document(readings, List.of(), chosen, "block series of " + table));
  }

  /** What a table can't use would else be passed over in silence. */
  private void refuseLiveOptions() {
    Set<String> ofTables =
        Set.of("--sample-rate", "--chain", "--path", "--allow-samples", "--write");
    for (OptionSpec option : spec.commandLine().getParseResult().matchedOptions()) {
      if (!option.inherited() && !ofTables.contains(option.longestName())) {
        throw new UsageException(
            option.longestName() + " is for a live series, found a table of readings",
            "leave it out, or measure with --live instead of the table");
      }
    }
  }

  private Answer measured(Optional<ChosenPath> chosen) throws Exception {
    DataFolder data = DataFolder.of(console.environment());
    Optional<Profile> kept = live.kept(data);
    Profile settings = live.settings(kept);
    AudioBackend backend = rig.backend(backends, settings.backend(), chosen);
    Consent consent = new Consent(console, !backend.name().equals(LiveOptions.SIMULATED), yes);
    consent.requireSomebody();
    LiveTarget target =
        new LiveTarget(
            backends,
            backend,
            live.profile,
            settings,
            ArrivalChoice.UNDECIDED,
            data.calibrations());
    LiveSeries series = new LiveSeries(target, minutes.orElse(0.0), consent);
    try (HostBlocks host = HostBlocks.of(backend, rig, chosen, consent)) {
      series.read(host, sizes.orElse(USUAL).sizes());
    }
    if (series.readings().size() < 2) {
      return new Answer(ExitCode.NOT_TRUSTWORTHY, tooFew(series));
    }
    return Answer.good(document(series.readings(), series.notes(), chosen, "block series, live"));
  }

  private static ErrorDocument tooFew(LiveSeries series) {
    SeriesNote why = series.notes().get(0);
    return new ErrorDocument(
        "series",
        "too-few-readings",
        "a series needs readings at two block sizes, found %d: %s"
            .formatted(series.readings().size(), why.text()),
        why.hint());
  }

  private SeriesDocument document(
      List<SeriesReading> readings,
      List<SeriesNote> more,
      Optional<ChosenPath> chosen,
      String source) {
    SeriesFit fit = BlockSeries.fit(readings);
    chainToWrite.ifPresent(target -> write(target, fit, source));
    List<SeriesNote> notes = new ArrayList<>(SeriesNotes.of(fit));
    notes.addAll(more);
    return new SeriesDocument(
        fit,
        notes,
        chosen.map(c -> FixedSplit.of(fit, c.chain(), c.path(), c.allowSamples())),
        CleanRun.of(readings),
        chainToWrite.map(Path::toString));
  }

  private SampleRate rate(Optional<ChosenPath> chosen) {
    Optional<SampleRate> rate = live.device.rate(Optional.empty());
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

  private static void write(Path target, SeriesFit fit, String source) {
    if (!SeriesStages.possible(fit)) {
      throw new UsageException(
          "no stages could have less than no delay, as this series has it",
          "look at it without --write, and check readings and sample rate");
    }
    TextFile.writeNew(target, SeriesStages.chainFile(fit, source));
  }
}
