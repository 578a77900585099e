package dev.loopgauge.cli.terminal;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.UnreadableRecordingException;
import dev.loopgauge.chain.UnknownPathException;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.verify.SeriesFormatException;
import java.io.IOException;
import java.util.Locale;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * A failed command: what to say and the exit code.
 *
 * @param exitCode one of {@link ExitCode}
 * @param code the name in documents
 * @param text what happened, one line
 * @param hint what to try, one line
 */
public record Failure(int exitCode, String code, String text, String hint) {
  /** Keeps both to one line. */
  public Failure {
    text = oneLine(text);
    hint = oneLine(hint);
  }

  /**
   * The failure that an exception stands for. One that nobody foresaw is the program's fault, but
   * is nearly always brought about by the input: it exits as unusable input does.
   */
  public static Failure of(Throwable thrown) {
    if (thrown instanceof UsageException e) {
      return usage("wrong-arguments", e.getMessage(), e.hint());
    }
    if (thrown instanceof UnmatchedArgumentException e) {
      return usage("wrong-arguments", textFor(e), hintFor(e));
    }
    if (thrown instanceof ParameterException e) {
      return usage("wrong-arguments", e.getMessage(), hintFor(e));
    }
    if (thrown instanceof ChainFormatException e) {
      return usage("unusable-chain", e.getMessage(), e.hint());
    }
    if (thrown instanceof SeriesFormatException e) {
      return usage("unusable-series", e.getMessage(), e.hint());
    }
    if (thrown instanceof UnknownPathException e) {
      return usage("unknown-path", e.getMessage(), e.hint());
    }
    if (thrown instanceof UnreadableRecordingException e) {
      return of(e.getCause());
    }
    if (thrown instanceof AudioFileException e) {
      return usage("unusable-file", e.getMessage(), e.hint());
    }
    if (thrown instanceof SetupException e) {
      return usage("unusable-setup", e.getMessage(), e.hint());
    }
    if (thrown instanceof CaptureException e) {
      return ofCapture(e);
    }
    if (thrown instanceof JournalException e) {
      return new Failure(ExitCode.JOURNAL, "journal", e.getMessage(), e.hint());
    }
    if (thrown instanceof IOException) {
      return usage(
          "unusable-file",
          "a file can't be read or written: " + thrown,
          "does it exist, may you use it, and is there room on the disk?");
    }
    if (thrown instanceof OutOfMemoryError) {
      return usage(
          "out-of-memory",
          "this needs more memory than Java was given",
          "a shorter recording or --max-delay, or `java -Xmx4g -jar ...` for more memory");
    }
    return usage(
        "unexpected",
        "something went wrong that should not: " + thrown,
        "the same command with --debug shows where; please report it");
  }

  private static Failure usage(String code, String text, String hint) {
    return new Failure(ExitCode.USAGE, code, text, hint);
  }

  private static Failure ofCapture(CaptureException e) {
    boolean feedback = e.kind() == CaptureException.Kind.FEEDBACK;
    String code = e.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
    int exitCode = feedback ? ExitCode.NOT_TRUSTWORTHY : ExitCode.AUDIO;
    return new Failure(exitCode, code, e.getMessage(), e.hint());
  }

  private static String textFor(UnmatchedArgumentException e) {
    String found = e.getUnmatched().get(0);
    if (e.isUnknownOption()) {
      return "unknown option '" + found + "'";
    }
    boolean takesCommand = !e.getCommandLine().getSubcommands().isEmpty();
    return (takesCommand ? "unknown command '" : "unexpected argument '") + found + "'";
  }

  private static String hintFor(ParameterException e) {
    if (e instanceof UnmatchedArgumentException unmatched
        && !unmatched.getSuggestions().isEmpty()) {
      return "did you mean " + unmatched.getSuggestions().get(0) + "?";
    }
    String command = e.getCommandLine().getCommandSpec().qualifiedName();
    return "`" + command + " --help` shows what it takes";
  }

  private static String oneLine(String text) {
    return text.strip().replaceAll("\\s*\\R\\s*", " ");
  }
}
