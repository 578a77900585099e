package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.LiveOptions;
import dev.loopgauge.cli.option.RigOptions;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.live.PatchJob;
import dev.loopgauge.job.live.Site;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Finds out which return hears which send. */
@Command(
    sortOptions = false,
    description = {
      "Find out which return hears which send, by quiet ticks.",
      "",
      "Ticks the sends that are named, or the first eight, one after the other, while every return"
          + " listens. With a chain file it prints the patch sheet of all its paths and ticks it off."
    },
    footer = {
      "  loopgauge patch --profile foh",
      "  loopgauge patch rig.yaml",
      "  loopgauge patch rig.yaml --profile foh"
    })
public final class PatchCommand implements Subcommand {
  private final Site site;

  @Parameters(
      arity = "0..1",
      paramLabel = "CHAIN",
      description = "The chain file whose patch sheet is ticked off.")
  private Optional<Path> chain = Optional.empty();

  @Option(names = "--path", paramLabel = "NAME", description = "Only this path of it.")
  private Optional<String> path = Optional.empty();

  @Option(names = "--yes", description = "Play without asking first.")
  private boolean agreed;

  @Mixin private final LiveOptions live = new LiveOptions();

  @ArgGroup(validate = false, heading = "%nThe simulated rig, with --backend simulated:%n")
  private RigOptions rig = new RigOptions();

  /** A command that runs at a site. */
  public PatchCommand(Site site) {
    this.site = site;
  }

  @Override
  public Answer answer() throws Exception {
    return new PatchJob(live.choice(), new BudgetChoice(chain, path, 0), rig.choice(), agreed)
        .run(site);
  }
}
