package dev.loopgauge.cli.command;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.planned.PlanJob;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.signal.SampleRate;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Chooses block size, sample rate and routing. */
@Command(
    sortOptions = false,
    description = {
      "Choose block size, sample rate and patching within every limit.",
      "",
      "A path enters the host where a stage is stated in blocks, is reported-by: host, or has a name that begins with host. In-ear and wedge paths may be taken from before it, by a second patch of the same input; house and stream paths stay. Best first: the largest block, then sound closest to picture, then the fewest paths patched anew."
    },
    footer = {"  loopgauge plan rig.yaml --block-sizes 64,128,256"})
public final class PlanCommand implements Subcommand {
  @Parameters(paramLabel = "CHAIN", description = "The chain file.")
  private Path chainFile = Path.of("");

  @Option(
      names = "--block-sizes",
      paramLabel = "LIST",
      split = ",",
      converter = Converters.Count.class,
      description = "The block sizes that the host offers, such as 64,128 (16 to 4096).")
  private List<Integer> blockSizes = BlockSizes.USUAL;

  @Option(
      names = "--sample-rates",
      paramLabel = "LIST",
      split = ",",
      converter = Converters.Rate.class,
      description = "The rates that all can run at (the chain file's own).")
  private List<SampleRate> rates = List.of();

  @Option(
      names = "--keep-in-host",
      paramLabel = "PATH",
      description = "An in-ear or wedge path that needs the host. May be given again.")
  private List<String> keptInHost = List.of();

  @Option(
      names = "--may-leave-host",
      paramLabel = "PATH",
      description = "A house or stream path that could do without. May be given again.")
  private List<String> mayLeaveHost = List.of();

  @Option(
      names = "--rule",
      paramLabel = "RULE",
      defaultValue = "ebu-r37",
      converter = Converters.Rule.class,
      description = "What judges sound against picture, as in `budget` (${DEFAULT-VALUE}).")
  private PictureRule rule = PictureRule.EBU_R37;

  @Option(
      names = "--fit",
      paramLabel = "PATH=FILE",
      description =
          "What `series --json` found on a path, used at its sample rate in place of the"
              + " prediction. Settings at which sound dropped out are left out.")
  private List<String> fits = List.of();

  @Override
  public Answer answer() throws ChainFormatException {
    return new PlanJob(chainFile, blockSizes, rates, keptInHost, mayLeaveHost, rule, fits).run();
  }
}
