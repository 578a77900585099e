package dev.loopgauge.cli.command;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.ChangeFormatException;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChangeFormat;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.RuleConverter;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.budget.WhatIfDocument;
import dev.loopgauge.signal.SampleRate;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows how late each path of a chain file is predicted to be. */
@Command(
    description = "Show how late each path is predicted to be, against its listener's limits.",
    footer = {
      "",
      "When rate or block size change, stages stated in samples, blocks or packets",
      "keep their count; stages stated in ms, metres or feet keep their time."
    })
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
      converter = RuleConverter.class,
      description =
          "What judges sound against picture: ebu-r37, itu-bt1359, atsc-is191 or itu-j100; for a"
              + " part of the chain, ebu-r37-stage or itu-bt1359-source, -transmitter, -segment"
              + " (${DEFAULT-VALUE}).")
  private PictureRule rule = PictureRule.EBU_R37;

  @Override
  public Answer answer() throws ChainFormatException {
    Chain chain = asAsked(ChainFile.read(chainFile));
    if (changes.isEmpty()) {
      return Answer.good(budget(chain));
    }
    try {
      return Answer.good(whatIf(chain));
    } catch (ChangeFormatException e) {
      throw new UsageException(e.getMessage(), e.hint());
    }
  }

  private WhatIfDocument whatIf(Chain chain) {
    List<String> told = new ArrayList<>();
    Chain changed = chain;
    for (String written : changes) {
      Change change = ChangeFormat.parse(written);
      told.add(change.told(changed));
      changed = change.on(changed);
    }
    return new WhatIfDocument(told, budget(chain), budget(changed));
  }

  private BudgetDocument budget(Chain chain) {
    List<ChainPath> chosen =
        paths.isEmpty()
            ? List.copyOf(chain.paths().values())
            : paths.stream().distinct().map(chain::path).toList();
    return new BudgetDocument(
        chain,
        chosen.stream().map(path -> ChainBudget.of(chain, path)).toList(),
        !paths.isEmpty(),
        rule);
  }

  private Chain asAsked(Chain written) {
    Chain chain = rate.map(written::withSampleRate).orElse(written);
    try {
      return blockSize.map(chain::withBlockSize).orElse(chain);
    } catch (IllegalArgumentException e) {
      throw new UsageException(e.getMessage(), "give a block size that the host offers");
    }
  }
}
