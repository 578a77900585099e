package dev.loopgauge.cli;

import dev.loopgauge.cli.command.DocumentKinds;
import dev.loopgauge.cli.command.Endless;
import dev.loopgauge.cli.command.LineByLine;
import dev.loopgauge.cli.command.LoopgaugeCommand;
import dev.loopgauge.cli.command.Stoppable;
import dev.loopgauge.cli.command.Subcommand;
import dev.loopgauge.cli.terminal.Colour;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.terminal.Failure;
import dev.loopgauge.cli.terminal.Letters;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.ProgramVersion;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.JournalName;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.report.form.Discreet;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.ErrorDocument;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.setup.DataFolder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** One run of the program: parses, lets the command answer, prints, and chooses the exit code. */
final class Invocation {
  private final List<String> args;
  private final Console console;
  private final CommandLine line;
  private Optional<EndHook> endHook = Optional.empty();

  /** A run with these arguments on this console, with these back ends where it needs any. */
  Invocation(List<String> args, Console console, Supplier<AudioSystem> audio) {
    this.args = helpLast(args);
    this.console = console;
    this.line = Commands.lineFor(this.args, console, audio);
  }

  /** {@code help COMMAND} is {@code COMMAND --help}. */
  private static List<String> helpLast(List<String> args) {
    return !args.isEmpty() && args.get(0).equals("help")
        ? Stream.concat(args.stream().skip(1), Stream.of("--help")).toList()
        : List.copyOf(args);
  }

  /** What is asked about a command needs none of its options, as help needs none. */
  private static List<String> asHelp(List<String> args) {
    return args.contains("--json-schema")
        ? args.stream()
            .filter(arg -> !arg.equals("--help") && !arg.equals("-h"))
            .map(arg -> arg.equals("--json-schema") ? "--help" : arg)
            .toList()
        : args;
  }

  /** Runs the command. Throws nothing: what goes wrong is said and becomes the exit code. */
  int run() {
    int code = parsedAndRun();
    endHook.ifPresent(hook -> hook.close(code));
    return code;
  }

  private int parsedAndRun() {
    String command = nameOf(line);
    try {
      Letters.check(args);
      ParseResult parsed = line.parseArgs(asHelp(args).toArray(String[]::new));
      while (parsed.hasSubcommand()) {
        parsed = parsed.subcommand();
      }
      CommandLine last = parsed.commandSpec().commandLine();
      command = nameOf(last);
      if (parsed.isUsageHelpRequested()) {
        if (!parsed.unmatched().isEmpty()) {
          throw new UnmatchedArgumentException(last, parsed.unmatched());
        }
        return asked("--json-schema") ? schema(command) : help(command, last);
      }
      if (parsed.isVersionHelpRequested()) {
        print(new ProgramText(command, "version", ProgramVersion.line() + "\n"));
        return ExitCode.GOOD;
      }
      Letters.checkFolder(System.getProperty("user.dir"));
      return answer(last);
    } catch (ParameterException e) {
      return fail(nameOf(e.getCommandLine()), e);
    } catch (Exception | OutOfMemoryError | StackOverflowError e) {
      return fail(command, e);
    }
  }

  private int help(String command, CommandLine last) {
    print(new ProgramText(command, "help", Help.text(last, console, ansi())));
    return ExitCode.GOOD;
  }

  /** The schema of a command's documents, as JSON with --json and without. */
  private int schema(String command) {
    Map<String, Object> schema =
        DocumentKinds.schema(command)
            .orElseThrow(
                () ->
                    new UsageException(
                        "`" + command + "` prints no document of its own",
                        "name a command that does, such as `loopgauge measure --json-schema`"));
    console.out().println(Json.line(schema));
    return ExitCode.GOOD;
  }

  private int answer(CommandLine last) throws Exception {
    if (!(last.getCommand() instanceof Subcommand subcommand)) {
      throw new ParameterException(last, "which command? none was given");
    }
    if (subcommand instanceof Endless endless) {
      endHook = Optional.of(new EndHook(endless.stopSign()));
    }
    if (subcommand instanceof Stoppable stoppable) {
      StopHook hook = new StopHook(stoppable.soFar(), a -> print(a.document()));
      try {
        return shown(subcommand);
      } finally {
        hook.close();
      }
    }
    return shown(subcommand);
  }

  private int shown(Subcommand subcommand) throws Exception {
    Answer answer = subcommand.answer();
    print(answer.document());
    if (console.out().checkError()) {
      throw new UsageException(
          "the result could not be written to standard output", "is the disk full, the pipe shut?");
    }
    return ExitCode.of(answer.ending());
  }

  private int fail(String command, Throwable thrown) {
    Failure failure = Failure.of(thrown);
    ErrorDocument error = ErrorDocument.of(command, failure.code(), failure.text(), failure.hint());
    if (asked("--json")) {
      print(error.told(new Discreet(places())));
    } else {
      console.err().print(error.text());
    }
    if (asked("--debug")) {
      thrown.printStackTrace(console.err());
    }
    return failure.exitCode();
  }

  /** Where the files and databases may lie that a failure can name. */
  private List<String> places() {
    List<String> places = new ArrayList<>();
    for (String arg : args) {
      places.add(arg);
      places.add(arg.substring(arg.indexOf('=') + 1));
    }
    Optional.ofNullable(console.environment().get(JournalName.VARIABLE)).ifPresent(places::add);
    places.add(DataFolder.of(console.environment()).path().resolve("any").toString());
    places.add(Path.of(System.getProperty("java.io.tmpdir"), "any").toString());
    return places;
  }

  /** What the program says of itself. */
  private record ProgramText(String command, String outcome, String text) implements Document {
    @Override
    public Map<String, Object> json() {
      Map<String, Object> json = Document.head(command, outcome);
      json.put("text", text);
      return json;
    }
  }

  /** The command as typed, without the program's name in front: {@code profile save}. */
  private static String nameOf(CommandLine line) {
    String typed = line.getCommandSpec().qualifiedName();
    return typed.substring(typed.indexOf(' ') + 1);
  }

  private void print(Document document) {
    if (asked("--json")) {
      console.out().println(inLines() ? Json.line(document.json()) : Json.write(document));
    } else {
      console.out().print(Colour.paint(console.shown(document.text()), ansi()));
    }
  }

  /** Looked up in the raw arguments, as {@link #asked}. */
  private boolean inLines() {
    return args.stream()
        .flatMap(arg -> Optional.ofNullable(line.getSubcommands().get(arg)).stream())
        .findFirst()
        .filter(command -> command.getCommand() instanceof LineByLine)
        .isPresent();
  }

  private Ansi ansi() {
    return ((LoopgaugeCommand) line.getCommand()).colour.on(console);
  }

  /** Looked up in the raw arguments, since it counts even where parsing them failed. */
  private boolean asked(String option) {
    return args.contains(option) || args.contains(option + "=true");
  }
}
