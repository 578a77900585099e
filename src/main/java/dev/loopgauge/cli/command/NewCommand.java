package dev.loopgauge.cli.command;

import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.planned.DraftJob;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Writes a first chain file from the answers to a few questions. */
@Command(
    sortOptions = false,
    description = {
      "Write a chain file from the answers to at most ten questions.",
      "",
      "Without a terminal the answers are read from standard input, a line each; an empty line takes"
          + " the usual answer."
    },
    footer = {"  loopgauge new -o rig.yaml"})
public final class NewCommand implements Subcommand {
  private final Person person;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      required = true,
      description = "The chain file to write; it must not exist.")
  private Path file = Path.of("");

  /** A command that asks this person. */
  public NewCommand(Person person) {
    this.person = person;
  }

  @Override
  public Answer answer() throws Exception {
    return new DraftJob(file).run(person);
  }
}
