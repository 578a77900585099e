package dev.loopgauge.cli;

import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.wiring.Adapters;
import dev.loopgauge.job.ProgramVersion;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.job.recorded.WarmUp;
import java.util.List;
import java.util.Locale;

/** Starts the program. */
public final class Main {
  private Main() {}

  /** Runs one command and exits with its code. Numbers are plain whatever the system's language. */
  public static void main(String[] args) {
    Locale.setDefault(Locale.ROOT);
    if (args.length > 0 && args[0].equals("analyze")) {
      WarmUp.begin();
    }
    // No argument is of such a type, and picocli would load what converts to each.
    System.setProperty("picocli.converters.excludes", "java.(sql|time).*");
    System.exit(run(args, Console.ofProcess()));
  }

  /** Runs one command on a console and gives its exit code, one of {@link ExitCode}. */
  public static int run(String[] args, Console console) {
    // The version alone needs no parser, which takes far longer to make than the answer.
    if (args.length == 1 && (args[0].equals("--version") || args[0].equals("-V"))) {
      console.out().print(ProgramVersion.line() + "\n");
      return ExitCode.GOOD;
    }
    return new Invocation(List.of(args), console, Adapters::ofThisComputer).run();
  }

  /** Runs one command with back ends other than the computer's. */
  static int run(List<String> args, Console console, AudioSystem audio) {
    return new Invocation(args, console, () -> audio).run();
  }
}
