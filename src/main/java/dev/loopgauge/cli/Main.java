package dev.loopgauge.cli;

/** Starts the program. */
public final class Main {
  private Main() {}

  /** Runs one command and exits with its code. */
  public static void main(String[] args) {
    System.exit(run(args, Console.ofProcess()));
  }

  /** Runs one command on a console and gives its exit code, one of {@link ExitCode}. */
  public static int run(String[] args, Console console) {
    return new Invocation(args, console).run();
  }
}
