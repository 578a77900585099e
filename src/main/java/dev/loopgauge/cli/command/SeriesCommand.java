package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.BlockSizeList;
import dev.loopgauge.cli.option.BudgetOptions;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.LiveOptions;
import dev.loopgauge.cli.option.RigOptions;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.SoFar;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.live.SeriesJob;
import dev.loopgauge.job.live.Site;
import dev.loopgauge.job.recorded.SeriesTableJob;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Works out what a host adds at any block size. */
@Command(
    sortOptions = false,
    description = {
      "Work out how many blocks, plus a fixed part, a host adds.",
      "",
      "From readings at several block sizes. FILE is a table in CSV; its first line names the"
          + " columns: block-size, delay-ms or delay-samples, and if wanted uncertainty-samples,"
          + " cpu-percent, dropouts. Give three block sizes or more, far apart, so that a misread"
          + " one stands out.",
      "",
      "--live measures instead, as `measure` does: jack is set to each block size and back at the"
          + " end; elsewhere you are asked to set the host."
    },
    footer = {
      "  loopgauge series readings.csv --sample-rate 48000",
      "  loopgauge series --live --profile foh --block-sizes 64,256,1024"
    })
public final class SeriesCommand implements Stoppable {
  /** What a table can be read with. */
  private static final Set<String> OF_TABLES =
      Set.of("--sample-rate", "--chain", "--path", "--allow-samples", "--out");

  private final Site site;
  private final SoFar soFar = new SoFar();

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
  private BlockSizeList sizes = new BlockSizeList(SeriesJob.DEFAULT_SIZES);

  @Option(
      names = "--for",
      paramLabel = "TIME",
      converter = Converters.Minutes.class,
      description = "With --live: how long to go on at each, such as 2m, counting lost sound.")
  private double minutes;

  @Option(names = "--yes", description = "With --live: play without asking first.")
  private boolean agreed;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      description = "Write the result as a chain file of two stages; it must not exist.")
  private Optional<Path> out = Optional.empty();

  @ArgGroup(validate = false, heading = "%nWhat to compare with:%n")
  private BudgetOptions budget = new BudgetOptions();

  @Mixin private final LiveOptions live = new LiveOptions();

  @ArgGroup(validate = false, heading = "%nThe simulated rig, with --backend simulated:%n")
  private RigOptions rig = new RigOptions();

  @Override
  public SoFar soFar() {
    return soFar;
  }

  /** A command that runs at a site. */
  public SeriesCommand(Site site) {
    this.site = site;
  }

  @Override
  public Answer answer() throws Exception {
    if (isLive == file.isPresent()) {
      throw new UsageException(
          "expected a table of readings or --live, found " + (isLive ? "both" : "neither"),
          "name the table, or measure with --live and the options of `loopgauge measure`");
    }
    if (isLive) {
      return new SeriesJob(
              live.choice(), budget.choice(), rig.choice(), sizes.sizes(), minutes, out, agreed)
          .run(site, soFar);
    }
    refuseLiveOptions();
    return new SeriesTableJob(file.get(), live.choice().device().rate(), budget.choice(), out)
        .run();
  }

  /** What a table can't use would else be passed over in silence. */
  private void refuseLiveOptions() {
    for (OptionSpec option : spec.commandLine().getParseResult().matchedOptions()) {
      if (!option.inherited() && !OF_TABLES.contains(option.longestName())) {
        throw new UsageException(
            option.longestName() + " is for a live series, found a table of readings",
            "leave it out, or measure with --live instead of the table");
      }
    }
  }
}
