package dev.loopgauge.cli.command;

import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.planned.BudgetJob;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.signal.SampleRate;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows how late each path of a chain file is predicted to be. */
@Command(
    sortOptions = false,
    description = {
      "Predict the delay of each path, against its listener's limits.",
      "",
      "When rate or block size change, stages stated in samples, blocks or packets keep their count; stages stated in ms, metres or feet keep their time."
    },
    footer = {"  loopgauge budget rig.yaml", "  loopgauge budget rig.yaml --change block-size=128"})
public final class BudgetCommand implements Subcommand {
  @Parameters(paramLabel = "CHAIN", description = "The chain file.")
  private Path chainFile = Path.of("");

  @Option(
      names = "--path",
      paramLabel = "NAME",
      description = "Only this path, stage by stage. May be given again.")
  private List<String> paths = List.of();

  @Option(
      names = "--block-size",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "As if the host ran at this block size.")
  private Optional<Integer> blockSize = Optional.empty();

  @Option(
      names = "--sample-rate",
      paramLabel = "HZ",
      converter = Converters.Rate.class,
      description = "As if everything ran at this sample rate.")
  private Optional<SampleRate> rate = Optional.empty();

  @Option(
      names = "--change",
      paramLabel = "CHANGE",
      description =
          "As if this were different: block-size=N, sample-rate=HZ, absent=STAGE, twice=STAGE,"
              + " extra-block=STAGE, fewer-blocks=STAGE, not-compensated=STAGE or"
              + " distance=STAGE:METRES. May be given again.")
  private List<String> changes = List.of();

  @Option(
      names = "--rule",
      paramLabel = "RULE",
      defaultValue = "ebu-r37",
      converter = Converters.Rule.class,
      description =
          "What judges sound against picture: ebu-r37, itu-bt1359, atsc-is191 or itu-j100; for a"
              + " part of the chain, ebu-r37-stage or itu-bt1359-source, -transmitter, -segment"
              + " (${DEFAULT-VALUE}).")
  private PictureRule rule = PictureRule.EBU_R37;

  @Option(
      names = "--full",
      description =
          "List everything; left out, rows that say the same share one where there are many.")
  private boolean full;

  @Override
  public Answer answer() throws ChainFormatException {
    return new BudgetJob(chainFile, paths, blockSize, rate, changes, rule, full).run();
  }
}
