package dev.loopgauge.cli.terminal;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.FileTrouble;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.signal.Hinted;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.InvalidPathException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine;
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
  private static final String REFERENCE = "--reference";
  private static final String RETURN = "--return";

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
    if (thrown instanceof Hinted hinted) {
      return new Failure(exitCode(hinted), hinted.code(), hinted.getMessage(), hinted.hint());
    }
    if (thrown instanceof ParameterException e && recording(e).isPresent()) {
      return asked(recording(e).get(), e);
    }
    if (thrown instanceof UnmatchedArgumentException e) {
      return usage("wrong-arguments", textFor(e), hintFor(e));
    }
    if (thrown instanceof ParameterException e) {
      return usage("wrong-arguments", e.getMessage(), hintFor(e));
    }
    if (thrown instanceof InvalidPathException e) {
      UsageException refused = Letters.noFile(e.getInput(), e.getReason());
      return usage("unusable-file", refused.getMessage(), refused.hint());
    }
    if (thrown instanceof UncheckedIOException e) {
      return of(e.getCause());
    }
    if (thrown instanceof IOException e) {
      return usage(
          "unusable-file",
          FileTrouble.told(e),
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
        "something went wrong that should not",
        "the same command with --debug shows what and where; please report it");
  }

  private static int exitCode(Hinted failed) {
    if (failed instanceof CaptureException capture) {
      boolean feedback = capture.kind() == CaptureException.Kind.FEEDBACK;
      return feedback ? ExitCode.NOT_TRUSTWORTHY : ExitCode.AUDIO;
    }
    return failed instanceof JournalException ? ExitCode.JOURNAL : ExitCode.USAGE;
  }

  private static Failure usage(String code, String text, String hint) {
    return new Failure(ExitCode.USAGE, code, text, hint);
  }

  private static String textFor(UnmatchedArgumentException e) {
    String found = e.getUnmatched().get(0);
    if (e.isUnknownOption()) {
      return "unknown option '" + found + "'";
    }
    boolean takesCommand = !e.getCommandLine().getSubcommands().isEmpty();
    return (takesCommand ? "unknown command '" : "unexpected argument '") + found + "'";
  }

  /** An argument without an option, given to a command that takes recordings by option. */
  private static Optional<String> recording(ParameterException e) {
    CommandLine line = e.getCommandLine();
    boolean takesRecordings =
        line.getCommandSpec().findOption(REFERENCE) != null
            && line.getCommandSpec().findOption(RETURN) != null;
    List<String> unmatched = takesRecordings ? line.getParseResult().unmatched() : List.of();
    return unmatched.stream().noneMatch(argument -> argument.startsWith("-"))
        ? unmatched.stream().findFirst()
        : Optional.empty();
  }

  private static Failure asked(String recording, ParameterException e) {
    String word = word(recording);
    String missing = missing(e.getCommandLine());
    return usage(
        "wrong-arguments",
        "What should I do with " + recording + "?",
        e.getCommandLine().getParseResult().hasMatchedOption(REFERENCE)
            ? "`%s %s%s`, if that is what came back".formatted(RETURN, word, missing)
            : "`%s %s %s OTHER.wav%s`, or run `loopgauge pairs %s`"
                .formatted(REFERENCE, word, RETURN, missing, word));
  }

  /** The other options that a command can't do without and wasn't given. */
  private static String missing(CommandLine line) {
    return line.getCommandSpec().options().stream()
        .filter(option -> option.required() && !option.longestName().equals(REFERENCE))
        .filter(option -> !line.getParseResult().hasMatchedOption(option))
        .map(option -> " " + option.longestName() + " " + option.paramLabel())
        .collect(Collectors.joining());
  }

  /** As it can be typed: in double quotes where a shell would part it. */
  private static String word(String name) {
    return name.matches("[\\w./:\\\\-]+")
        ? name
        : '"' + name.replaceAll("([\"\\\\$`])", "\\\\$1") + '"';
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
