package dev.loopgauge.cli.command;

import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.planned.CheckJob;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Says what is wrong or missing in a chain file. */
@Command(
    sortOptions = false,
    description = {
      "Say what is wrong or missing in a chain file, without predicting.",
      "",
      "Ends with 0 where the file can be used, whatever is said about it; with 2 where it can't."
    },
    footer = {"  loopgauge check rig.yaml"})
public final class CheckCommand implements Subcommand {
  @Parameters(paramLabel = "CHAIN", description = "The chain file.")
  private Path chainFile = Path.of("");

  @Override
  public Answer answer() throws ChainFormatException {
    return new CheckJob(chainFile).run();
  }
}
