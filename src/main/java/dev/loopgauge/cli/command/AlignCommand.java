package dev.loopgauge.cli.command;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.terminal.Refusals;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.kept.Logbook;
import dev.loopgauge.job.recorded.MeasuredFiles;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.plan.Alignment;
import dev.loopgauge.plan.DelayStep;
import dev.loopgauge.plan.LaterThanTargetException;
import dev.loopgauge.report.planned.AlignmentCsv;
import dev.loopgauge.report.planned.AlignmentDocument;
import dev.loopgauge.signal.Latency;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Says what to add to each path so that the paths of a mix meet. */
@Command(
    description = "Say what delay to add to each path, so that the paths of each mix meet.",
    footer = {
      "",
      "In a chain file, `offset-ms` keeps a path behind the others of its mix:",
      "  mixes: { field: [main, { path: tower, offset-ms: 8 }] }"
    })
public final class AlignCommand implements Subcommand {
  private final Console console;

  @Parameters(paramLabel = "CHAIN", description = "The chain file.")
  private Path chainFile = Path.of("");

  @Option(
      names = "--to",
      paramLabel = "PATH",
      description = "The path to meet in the mixes that have it (the latest of each mix).")
  private Optional<String> to = Optional.empty();

  @Option(
      names = "--step",
      paramLabel = "STEP",
      defaultValue = "samples",
      description =
          "The steps in which the desk sets delays, such as samples, 0.1ms, 0.01m or 1ft"
              + " (${DEFAULT-VALUE}).")
  private String step = "samples";

  @Option(
      names = "--measured",
      paramLabel = "FILE",
      description =
          "A document of `measure` or `analyze` for a path, to be used in place of the prediction."
              + " May be given again.")
  private List<Path> measured = List.of();

  @Option(
      names = "--show",
      paramLabel = "NAME",
      description =
          "Take the measured delays of this show from the journal: of each path the last one.")
  private Optional<String> show = Optional.empty();

  @Mixin private final JournalPlace journal = new JournalPlace();

  @Option(
      names = "--csv",
      paramLabel = "FILE",
      description = "Write the table to this file too; it must not exist.")
  private Optional<Path> csv = Optional.empty();

  /** A command on a console. */
  public AlignCommand(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws ChainFormatException, JournalException {
    Chain chain = ChainFile.read(chainFile);
    AlignmentDocument document =
        new AlignmentDocument(chain, alignment(chain), csv.map(Path::toString));
    csv.ifPresent(file -> write(file, AlignmentCsv.of(document)));
    return new Answer(document.isGood() ? ExitCode.GOOD : ExitCode.OUTSIDE, document);
  }

  private Alignment alignment(Chain chain) throws JournalException {
    if (chain.mixes().isEmpty()) {
      throw new UsageException(
          "expected mixes in " + chainFile + ", found none",
          "say which paths are heard together, for example mixes: { front: [house, wedge] }");
    }
    to.ifPresent(path -> checkTarget(chain, path));
    DelayStep steps = Refusals.asUsage(() -> DelayStep.parse(step));
    try {
      return Alignment.of(chain, loops(chain), to, steps);
    } catch (LaterThanTargetException e) {
      throw new UsageException(e.getMessage(), e.hint());
    }
  }

  private Map<String, Latency> loops(Chain chain) throws JournalException {
    if (show.isEmpty()) {
      return MeasuredFiles.loops(chain, measured);
    }
    if (!measured.isEmpty()) {
      throw new UsageException(
          "expected --show or --measured, found both", "leave one of them out");
    }
    try (Journal opened = journal.open(console.environment())) {
      return new Logbook(opened).loops(chain, show.get());
    }
  }

  private static void checkTarget(Chain chain, String path) {
    chain.path(path);
    boolean mixed =
        chain.mixes().values().stream()
            .flatMap(mix -> mix.entries().stream())
            .anyMatch(entry -> entry.path().equals(path));
    if (!mixed) {
      throw new UsageException(
          "expected --to with a path of a mix, found " + path + ", which is in none",
          "choose a path of one of the mixes " + String.join(", ", chain.mixes().keySet()));
    }
  }

  private static void write(Path file, String text) {
    try {
      Files.writeString(file, text, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    } catch (FileAlreadyExistsException e) {
      throw new UsageException(file + " exists already", "choose another name for --csv");
    } catch (IOException e) {
      throw new UsageException("can't write " + file + ": " + e.getMessage(), "is it a folder?");
    }
  }
}
