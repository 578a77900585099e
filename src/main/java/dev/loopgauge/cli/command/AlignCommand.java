package dev.loopgauge.cli.command;

import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.planned.AlignJob;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.When;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Says what to add to each path so that the paths of a mix meet. */
@Command(
    sortOptions = false,
    description = {
      "Say what delay to add to each path, so that the paths of each mix meet.",
      "",
      "In a chain file, `offset-ms` keeps a path behind the others of its mix: mixes: { field: [main, { path: tower, offset-ms: 8 }] }"
    },
    footer = {"  loopgauge align rig.yaml --step 0.1ms"})
public final class AlignCommand implements Subcommand {
  /** A listener who performs. */
  static final class Performer extends Converters.OneOf<Listener> {
    Performer() {
      super(new Listener[] {Listener.IN_EAR, Listener.WEDGE});
    }

    @Override
    protected String label(Listener listener) {
      return listener.label();
    }
  }

  /** What the desk can set, and who may hear later. */
  private static final class Delays {
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
        names = "--may-delay",
        paramLabel = "LISTENER",
        converter = Performer.class,
        description =
            "Let this performer hear later too: in-ear or wedge, whose paths are left alone"
                + " otherwise. May be given again.")
    private Set<Listener> mayDelay = Set.of();

    @Option(
        names = "--longest-ms",
        paramLabel = "MS",
        description = "The longest delay that the desk can set.")
    private Optional<Double> longestMs = Optional.empty();
  }

  /** Where measured delays come from. */
  private static final class Measured extends JournalPlace {
    @Option(
        names = "--measured",
        paramLabel = "FILE",
        description =
            "A document of `measure` or `analyze` for a path, to be used in place of the prediction."
                + " May be given again.")
    private List<Path> files = List.of();

    @Option(
        names = "--show",
        paramLabel = "NAME",
        description =
            "Take the measured delays of this show from the journal: of each path the last one.")
    private Optional<String> show = Optional.empty();

    @Option(
        names = "--when",
        paramLabel = "WHEN",
        converter = Converters.Day.class,
        description = "With --show: only readings before, during or after it.")
    private Optional<When> when = Optional.empty();
  }

  private final Console console;

  @Parameters(paramLabel = "CHAIN", description = "The chain file.")
  private Path chainFile = Path.of("");

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      description =
          "Write the table to this file as CSV; it must not exist. Texts that a spreadsheet would"
              + " run as formulas begin with an apostrophe.")
  private Optional<Path> table = Optional.empty();

  @ArgGroup(validate = false, heading = "%nWhat may be delayed, and how:%n")
  private Delays delays = new Delays();

  @ArgGroup(validate = false, heading = "%nMeasured delays in place of predicted ones:%n")
  private Measured measured = new Measured();

  /** A command on a console. */
  public AlignCommand(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws ChainFormatException, JournalException {
    OptionalDouble longest =
        delays.longestMs.map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
    return new AlignJob(
            chainFile,
            delays.to,
            delays.step,
            delays.mayDelay,
            longest,
            measured.files,
            measured.show,
            measured.when,
            measured.said(),
            table)
        .run(console.environment());
  }
}
